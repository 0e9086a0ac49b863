"""A client of another make (matrix-nio on vodozemac): asks in an encrypted room and prints, as JSON, what it could decrypt."""
import asyncio
import json
import sys
import tempfile

from nio import AsyncClient, AsyncClientConfig, LoginResponse, MegolmEvent, RoomCreateResponse, RoomMemberEvent, RoomMessageNotice


async def main(homeserver, user, password, bot, *questions):
    store = tempfile.mkdtemp(prefix="gleed-independent-")
    client = AsyncClient(homeserver, user, store_path=store, config=AsyncClientConfig(encryption_enabled=True, store_sync_tokens=False))
    assert isinstance(await client.login(password), LoginResponse)
    heard, failed, joined = [], [], asyncio.Event()

    async def notice(room, event):
        if event.sender == bot:
            heard.append({"body": event.body, "decrypted": event.decrypted})

    async def unreadable(room, event):
        failed.append(event.event_id)

    async def member(room, event):
        if event.state_key == bot and event.membership == "join":
            joined.set()

    client.add_event_callback(notice, RoomMessageNotice)
    client.add_event_callback(unreadable, MegolmEvent)
    client.add_event_callback(member, RoomMemberEvent)
    made = await client.room_create(
        is_direct=True,
        invite=[bot],
        initial_state=[{"type": "m.room.encryption", "state_key": "", "content": {"algorithm": "m.megolm.v1.aes-sha2"}}],
    )
    assert isinstance(made, RoomCreateResponse), made
    syncing = asyncio.create_task(client.sync_forever(timeout=10_000, full_state=True))
    await asyncio.wait_for(joined.wait(), 20)
    await asyncio.sleep(1)
    for at, question in enumerate(questions):
        await client.room_send(made.room_id, "m.room.message", {"msgtype": "m.text", "body": question}, ignore_unverified_devices=True)
        for _ in range(80):
            if len(heard) > at or failed:
                break
            await asyncio.sleep(0.25)
    syncing.cancel()
    await client.close()
    print(json.dumps({"heard": heard, "failed": failed}))


asyncio.run(main(*sys.argv[1:]))
