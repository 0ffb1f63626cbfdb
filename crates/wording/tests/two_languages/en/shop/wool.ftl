### Looked up by name.

merino = merino
merino-about = Fine and soft.
longhair = long-haired wool
