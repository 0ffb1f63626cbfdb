## assets.rs

there-is-no-such-file-reload = There is no such file. Reload the page that asked for it.
