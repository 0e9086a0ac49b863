import { storeContract } from "../contracts/store.contract.ts";
import { FILE, MEMORY, POSTGRES } from "./locations.ts";

for (const kind of [FILE, MEMORY, POSTGRES]) storeContract(kind);
