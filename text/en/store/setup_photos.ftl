## setup_photos.rs

lists-of-areas-came-for-photos-give = { $requests } lists of areas came for { $photos } photos: give one for all of them, or one for each in the same order.
no-piece-was-found-on-these-photos = No piece was found on these photos. Lay the pieces on the printed board, whose windows name them, or say where they lie with areas on the command line (woadstone setup-check --areas).
