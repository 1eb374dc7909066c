#include "archive/mended_name.h"

#include <doctest/doctest.h>

using thawslip::archive::is_mended_name;

TEST_CASE("only a slip of the keyboard is taken for the same dish") {
    struct Row {
        const char* before;
        const char* now;
        bool mended;
    };
    const Row rows[] = {
        {"squahs and red lentil stew", "squash and red lentil stew", true},
        {"brocoli soup", "broccoli soup", true},
        {"brocccoli soup", "broccoli soup", true},
        {"creme brulee", "creme brulee", true}, // accents are folded before
        {"apple-and-sage pork", "apple and sage pork", true},
        {"beef pot", "beet pot", false},
        {"chicken stew", "chickpea stew", false},
        {"chicken stew", "chickens stew", false},
        {"sole in wine", "sloe in wine", false}, // a swap, but a fish and a fruit
        {"crab rolls", "carb rolls", false},
        {"clam chowder", "calm chowder", false},
        {"red lentil dahl", "red lentil dhal", true},
        {"kael and barley", "kale and barley", true},
        {"raw mince", "rare mince", false},
        {"raw mince", "rwa mince", false}, // three letters are too few to be sure
        {"oat bake", "goat bake", false},
        {"bean pot", "bena pot", true},
        {"veal and kale", "kale and veal", false},
        {"peanut stew", "pea nut stew", false},
        {"squahs and lentli stew", "squash and lentil stew", false}, // two slips
        {"stew 12345", "stew 12354", false},
        {"pot 1", "pot 2", false},
        {"almond cake", "salmon cake", false},
        {"onion tart", "noion tart", false}, // the first letter stays
        {"stew", "", false},
        {"", "", true},
    };
    for (const auto& [before, now, mended] : rows) {
        CAPTURE(before);
        CAPTURE(now);
        CHECK(is_mended_name(before, now) == mended);
        CHECK(is_mended_name(now, before) == mended);
    }
}
