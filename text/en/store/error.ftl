## error.rs

the-bench-cant-be-kept-in-make = The bench can't be kept in { $path } ({ $source }). Make the folder writable or choose another one.
is-not-a-woadstone-database-move = { $path } is not a Woadstone database. Move it away or choose another folder for the bench.
the-bench-at-was-written = The bench at { $path } was written by a newer Woadstone. Use that version or a later one; nothing was changed.
the-benchs-database-could-not-nothing = The bench's database could not { $doing } ({ $source }). Nothing was half done; see that the disk has room and that its folder is writable, then try again.
the-benchs-database-could-not-be-brought = The bench's database could not be brought up to date ({ $cause }). It stays as it was; keep a copy of the folder before trying again.
the-photo-vault-cant-use-see = The photo vault can't use { $path } ({ $source }). See that the disk has room and that the folder is writable, then try again.
the-photos-file-is-missing = The photo's file { $path } is missing from the vault. Put it back from a copy of the bench, or add the photo again.
the-photos-file-was-damaged-since = The photo's file { $path } was damaged since it was added: its content no longer fits its name. Put it back from a copy of the bench, or add the photo again.
there-is-no-with-the-number = There is no { $what } with the number { $id } on this bench.
the-benchs-database-holds-a-that-cant = The bench's database holds a { $what } that can't be understood ({ $cause }). It may have been changed by another program; put the database back from a copy.
