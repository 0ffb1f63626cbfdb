## eye_grades.rs

of-piece-number = { $scale } { $grade } of piece number { $piece }, by { $by }
