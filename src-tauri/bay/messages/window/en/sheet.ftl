# The step sheet and what is done from it.
back = Back
