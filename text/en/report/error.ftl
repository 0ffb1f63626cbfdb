## error.rs

the-report-could-not-be-laid-out = The report could not be laid out ({ $cause }). The trial itself is untouched; please report this.
