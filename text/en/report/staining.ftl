## staining.rs

witness-cloth = witness cloth
pale-part = pale part
before-the-first-round = before the first round
cloth-that-should-have-stayed-pale = Cloth that should have stayed pale, against its own start. Grade of staining on the grey scale (5 is none), worked out by the formula of ISO 105-A04; in brackets what the noise of the readings leaves room for. Whose dye a stain is shows by its hue alone.
to = { $grade } ({ $worst } to { $best })
