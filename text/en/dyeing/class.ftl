## class.rs

class-of-dye = class of dye
