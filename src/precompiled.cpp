// Nothing of its own: the target that this file belongs to only carries the precompiled header.
