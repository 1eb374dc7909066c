// Nothing of its own: it takes the precompiled header, which CMake else does not know of in a fresh
// folder.
