## refusal.rs

the-photo-is-mirrored-as-some-front = The photo is mirrored, as some front cameras save it. Take it with the back camera, or switch mirroring off.
