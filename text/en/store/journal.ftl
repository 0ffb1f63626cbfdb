## journal.rs

a-place-is-five-numbers = a place in the journal is five numbers with points between
