merino = merinowol
merino-about = Fijn en zacht.
