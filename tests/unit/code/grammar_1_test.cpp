// Labels of the first grammar are in freezers: this file holds what they say, and does not change.

#include "code/fold.h"
#include "code/grammars.h"
#include "code/message.h"
#include "code/seal.h"
#include "unit/code/random_messages.h"
#include "unit/code/samples.h"

#include <algorithm>
#include <array>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::code;
using thawslip::test_support::Random;
using thawslip::test_support::squash_stew;

namespace {

constexpr std::string_view squash_text =
    "SQUASH AND RED LENTIL STEW\n"
    "SERVES 6 * BAG K7Q-2M4-9XC * MADE 17 OCT 2026 * BEST BY 17 JAN 2027\n"
    "THAW IN REFRIGERATOR\n"
    "AT START ADD 1 L VEGETABLE STOCK\n"
    "LAST 10 MIN ADD 200 G BABY SPINACH * SMALL BAG\n"
    "COOK IN SLOW COOKER * AT LOW * FOR 7-9 H * TO 74 C\n"
    "STEPS TIP THE THAWED BAG INTO THE COOKER * STIR IN THE STOCK\n"
    "CONTAINS CELERY\n"
    "END 1";

/// What the first labels say, and what of a message they can say.
std::string written(const Message& message) {
    return code::write(message, grammar_1);
}

Message sayable(Message message) {
    message.other_thaws.clear();
    message.raw = false;
    message.thaw_time.reset();
    message.placing.reset();
    message.cook_within_days.reset();
    message.cautions.clear();
    message.may_contain.clear();
    return message;
}

std::string sealed(std::string text) {
    return text + check_characters(text);
}

bool reads_as(const std::string& typed, const Message& message) {
    const auto read = parse(typed);
    return read.ok() && read.value() == message;
}

ReadFault::Kind fault_kind(const std::string& typed) {
    const auto read = parse(typed);
    REQUIRE(!read.ok());
    return read.fault().kind;
}

std::string replaced(std::string text, std::string_view what, std::string_view with) {
    for (std::size_t at = text.find(what); at != std::string::npos;
         at = text.find(what, at + with.size())) {
        text.replace(at, what.size(), with);
    }
    return text;
}

} // namespace

TEST_CASE("grammar 1: a bag's text reads as instructions") {
    CHECK(written(squash_stew()) == sealed(std::string{squash_text}));
}

TEST_CASE("grammar 1: what is written is read back as the same values") {
    Random random{1};
    for (int i = 0; i < 3000; ++i) {
        const Message message = sayable(folded(thawslip::test_support::random_message(random)));
        const std::string text = written(message);
        CAPTURE(text);
        const auto read = parse(text);
        REQUIRE(read.ok());
        REQUIRE(read.value() == message);
        REQUIRE(folded(message) == message);
    }
}

TEST_CASE("grammar 1: a dish whose name folds away is still called a dish") {
    Message message;
    message.dish = "(!)";
    CHECK(written(message) == sealed("DISH\nEND 1"));
}

TEST_CASE("grammar 1: what a scanner does to a text is undone") {
    const Message message = sayable(folded(squash_stew()));
    const std::string text = written(message);
    std::string small = text;
    std::ranges::transform(small, small.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    CHECK(reads_as(replaced(text, "\n", "\r\n"), message));
    CHECK(reads_as(replaced(text, "\n", "\r"), message));
    CHECK(reads_as(replaced(text, "\n", "\t"), message));
    CHECK(reads_as(replaced(text, "\n", "\n\n"), message));
    CHECK(reads_as(replaced(text, "\n", "  \n"), message));
    CHECK(reads_as(text + "\n", message));
    CHECK(reads_as(text + "\t", message));
    CHECK(reads_as(text + "\r\n \n", message));
    CHECK(reads_as("\n " + text, message));
    CHECK(reads_as("]Q1" + text, message));
    CHECK(reads_as(small, message));
}

TEST_CASE("grammar 1: every prefix of a text is refused") {
    const std::string text = written(squash_stew());
    for (std::size_t length = 0; length < text.size(); ++length) {
        CHECK(!parse(text.substr(0, length)).ok());
    }
}

TEST_CASE("grammar 1: a text with wrong characters is never read as another message") {
    Random random{8};
    const Message message = sayable(folded(squash_stew()));
    const std::string text = written(message);
    for (int i = 0; i < 20000; ++i) {
        std::string wrong = text;
        for (std::size_t times = 1 + random.below(3); times > 0; --times) {
            const std::size_t at = random.below(wrong.size());
            switch (random.below(3)) {
            case 0: wrong[at] = static_cast<char>(random.below(256)); break;
            case 1: wrong.erase(at, 1 + random.below(3)); break;
            default: wrong.insert(at, 1, static_cast<char>(random.below(256))); break;
            }
        }
        const auto read = parse(wrong);
        if (read.ok()) {
            CAPTURE(wrong);
            CHECK(read.value() == message);
        }
    }
}

TEST_CASE("grammar 1: foreign texts are refused, whatever they hold") {
    using Kind = ReadFault::Kind;
    CHECK(fault_kind("") == Kind::Foreign);
    CHECK(fault_kind("\n\n\n") == Kind::Foreign);
    CHECK(fault_kind("https://example.org/END 1ABC") == Kind::Foreign);
    CHECK(fault_kind("END 1ABC") == Kind::Foreign);
    CHECK(fault_kind("STEW\nEND 1ABC") == Kind::Damaged);
    // Their check is right, their lines are not: a text is read only if it is written that way.
    CHECK(fault_kind(sealed("STEW\nHELLO\nEND 1")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nSERVES 06\nEND 1")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nMADE 30 FEB 2026\nEND 1")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nADD SALT\nEND 1")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nCOOK FOR 1-2 DAYS\nEND 1")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nCOOK TO 74.05 C\nEND 1")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nCONTAINS MILK\nTHAW IN REFRIGERATOR\nEND 1")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nLAST 999999999999 MIN ADD SALT\nEND 1")) == Kind::Foreign);
    CHECK(fault_kind(std::string(1 << 20, 'A')) == Kind::Foreign);
    CHECK(fault_kind(std::string(1 << 20, '\n')) == Kind::Foreign);
}

TEST_CASE("grammar 1: bytes of any kind are refused without harm") {
    Random random{9};
    for (int i = 0; i < 3000; ++i) {
        std::string bytes(random.below(200), ' ');
        for (char& byte : bytes) {
            byte = static_cast<char>(random.below(256));
        }
        CHECK(!parse(bytes).ok());
        // With a true check it may be the name of a dish, but then it is written that way.
        const auto read = parse(sealed(bytes + "\nEND 1"));
        CHECK((!read.ok() || reads_as(written(read.value()), read.value())));
    }
}
