# Thousands of faulty files are read.
set(optimised ON)
