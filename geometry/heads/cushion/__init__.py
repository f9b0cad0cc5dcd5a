"""A flat cushion: a reinforced plate or a frame rail of the car stands on the pad's plain top."""
