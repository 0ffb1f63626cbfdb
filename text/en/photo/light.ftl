## light/mod.rs

the-phone-seems-to-have-lit-up = The phone seems to have lit up dark places by itself (HDR): the ground is lighter beside dark things than beside light ones, and so may cloth be. Switch HDR off.
