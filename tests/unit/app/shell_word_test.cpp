#include "app/shell_word.h"
#include "support/command.h"

#include <doctest/doctest.h>

using namespace thawslip;

TEST_CASE("a word that is proposed is one word to a shell, and bare where that is so anyway") {
    CHECK(app::shell_word("days/saturday-2.toml") == "days/saturday-2.toml");
    CHECK(app::shell_word("kürbis.toml") == "kürbis.toml");
    for (const std::string word :
         {"m n.toml", "it's.toml", "a;b", "$HOME", "~/x", "*", "", "a\"b"}) {
        CAPTURE(word);
        CHECK(test_support::run("printf %s " + app::shell_word(word)).out == word);
    }
}
