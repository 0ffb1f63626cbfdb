## requeue.rs

photo-it-and-its-marks-stay = photo { $photo }; it and its marks stay
