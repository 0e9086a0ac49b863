/** What stands as `chart` of a picture that is a photograph of the album: its data says which, for whom, and what its file is called. */
export const PHOTO = "photo";
