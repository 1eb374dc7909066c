#define DOCTEST_CONFIG_IMPLEMENT
#include <cstdlib>
#include <doctest/doctest.h>

int main(int argc, char** argv) {
    // What is run takes its paper from the locale where nobody says which: here from none.
    ::setenv("LC_ALL", "C.UTF-8", 1);
    return doctest::Context{argc, argv}.run();
}
