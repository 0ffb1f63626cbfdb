## home.rs

this-account-has-no-home-folder-say = this account has no home folder; say where to keep the bench with --home DIR
