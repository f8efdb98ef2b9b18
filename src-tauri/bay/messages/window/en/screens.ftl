# The other screens: bay, new job, photos, record, kit.
