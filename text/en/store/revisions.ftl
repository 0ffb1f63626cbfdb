## revisions.rs

there-is-no-such = There is no such { $what }.
the-was-changed-in-the-meantime = The { $what } was changed in the meantime: you saw revision { $upon }, the newest is { $number }. Nothing was changed; look at the { $what } again and repeat your change.
