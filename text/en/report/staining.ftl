## staining.rs

witness-cloth = witness cloth
pale-part = pale part
before-the-first-round = before the first round
