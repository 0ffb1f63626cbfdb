-- Devices that were paired, and where phones may come in. Of a device's token only
-- its hash is kept; a device is revoked, never deleted.

CREATE TABLE device (
    id           INTEGER PRIMARY KEY AUTOINCREMENT,
    name         TEXT NOT NULL,
    token_sha256 TEXT NOT NULL UNIQUE CHECK (length(token_sha256) = 64),
    paired_at    TEXT NOT NULL
) STRICT;

CREATE TABLE device_revocation (
    device_id INTEGER PRIMARY KEY REFERENCES device (id),
    made_at   TEXT NOT NULL
) STRICT;

-- When each device was last seen; overwritten.
CREATE TABLE device_seen (
    device_id INTEGER PRIMARY KEY REFERENCES device (id),
    at        TEXT NOT NULL
) STRICT;

-- What the person chose for the local network; the newest row counts.
CREATE TABLE phone_network (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,
    address  TEXT    NOT NULL, -- IPv4
    port     INTEGER NOT NULL CHECK (port BETWEEN 0 AND 65535),
    at_start INTEGER NOT NULL CHECK (at_start IN (0, 1)), -- on again when the program starts
    made_at  TEXT    NOT NULL
) STRICT;

CREATE TRIGGER device_stays_as_it_is BEFORE UPDATE ON device
BEGIN SELECT RAISE(ABORT, 'devices are never changed: revoke it and pair it again'); END;
CREATE TRIGGER device_stays BEFORE DELETE ON device
BEGIN SELECT RAISE(ABORT, 'devices are never deleted'); END;

CREATE TRIGGER device_revocation_stays_as_it_is BEFORE UPDATE ON device_revocation
BEGIN SELECT RAISE(ABORT, 'revocations are never changed'); END;
CREATE TRIGGER device_revocation_stays BEFORE DELETE ON device_revocation
BEGIN SELECT RAISE(ABORT, 'revocations are never taken back: pair the device again'); END;
