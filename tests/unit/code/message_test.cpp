#include "base/fill.h"
#include "code/fold.h"
#include "code/instructions.h"
#include "code/message.h"
#include "code/seal.h"
#include "kitchen/cautions/cautions.h"
#include "unit/code/random_messages.h"
#include "unit/code/samples.h"

#include <algorithm>
#include <array>
#include <doctest/doctest.h>

namespace message_test {

using namespace thawslip;
using namespace thawslip::code;
using thawslip::test_support::Random;
using thawslip::test_support::squash_stew;

namespace {

constexpr std::string_view squash_text =
    "SQUASH AND RED LENTIL STEW\n"
    "SERVES 6 * BAG K7Q-2M4-9XC * MADE 17 OCT 2026 * BEST BY 17 JAN 2027\n"
    "THAW IN REFRIGERATOR ON A TRAY * LOOK FROM 31 H * ALLOW 46 H * COOK WITHIN 3 DAYS\n"
    "AT START ADD 1 L VEGETABLE STOCK\n"
    "LAST 10 MIN ADD 200 G BABY SPINACH * SMALL BAG\n"
    "COOK IN SLOW COOKER * AT LOW * FOR 7-9 H * TO 74 C\n"
    "CAUTION THAW FULLY BEFORE SLOW COOKER\n"
    "CONTAINS CELERY\n"
    "MAY CONTAIN MUSTARD\n"
    "STEPS TIP THE THAWED BAG INTO THE COOKER * STIR IN THE STOCK\n"
    "END 2";

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

bool is_letter(char c) {
    return c >= 'A' && c <= 'Z';
}

/// Letters, digits, `+`, `-` and `.` up to a colon, with a letter among them (RFC 3986, 3.1).
bool has_scheme(std::string_view text) {
    bool letter = false;
    for (const char c : text) {
        if (c == ':' && letter) {
            return true;
        }
        const bool of_a_scheme =
            is_letter(c) || (c >= '0' && c <= '9') || c == '+' || c == '-' || c == '.';
        letter = of_a_scheme && (letter || is_letter(c));
    }
    return false;
}

/// `//`, `@`, or a full stop with a letter right after it.
bool has_address(std::string_view text) {
    for (std::size_t i = 0; i + 1 < text.size(); ++i) {
        if ((text[i] == '.' && is_letter(text[i + 1])) || text.substr(i, 2) == "//") {
            return true;
        }
    }
    return text.find('@') != std::string_view::npos;
}

std::string replaced(std::string text, std::string_view what, std::string_view with) {
    for (std::size_t at = text.find(what); at != std::string::npos;
         at = text.find(what, at + with.size())) {
        text.replace(at, what.size(), with);
    }
    return text;
}

} // namespace

TEST_CASE("a bag's text reads as instructions") {
    CHECK(write(squash_stew()) == sealed(std::string{squash_text}));
}

TEST_CASE("what is written is read back as the same values") {
    Random random{1};
    for (int i = 0; i < 3000; ++i) {
        const Message message = folded(thawslip::test_support::random_message(random));
        const std::string text = write(message);
        CAPTURE(text);
        const auto read = parse(text);
        REQUIRE(read.ok());
        REQUIRE(read.value() == message);
        REQUIRE(folded(message) == message);
    }
}

TEST_CASE("a message for a bag carries the plan's values") {
    using namespace std::chrono_literals;
    kitchen::PlannedPackage planned;
    planned.package.dish = "Crème de châtaigne";
    planned.package.servings = 4;
    planned.package.thaw.method = kitchen::ThawMethod::ColdWater;
    planned.package.contains = {"milk"};
    planned.package.may_contain = {"Haselnüsse", "sesame"};
    planned.made = std::chrono::year{2026} / 10 / 17;
    planned.keep_until.date = std::chrono::year{2027} / 1 / 17;
    kitchen::Quantity cream;
    cream.as_written = "½ cup cream";
    planned.finish = {{cream, {kitchen::When::Anchor::BeforeEnd, 5min}, "", {}}};
    planned.package.cook = kitchen::Cook{};
    planned.package.cook->in = "pot";
    planned.package.cook->until =
        kitchen::Temperature{(165.0 - 32.0) / 1.8, kitchen::TemperatureScale::Fahrenheit};
    const Message message = message_for(planned, {"K7Q-2M4-9XC", 1, 3});
    CHECK(write(message) == sealed("CREME DE CHATAIGNE\n"
                                   "SERVES 4 * BAG K7Q-2M4-9XC * MADE 17 OCT 2026 * USE BY 17 JAN "
                                   "2027\n"
                                   "THAW IN COLD WATER MAX 21 C / 70 F * COOK AT ONCE\n"
                                   "LAST 5 MIN ADD 1/2 CUP CREAM\n"
                                   "COOK IN POT * TO 165 F\n"
                                   "CONTAINS MILK\n"
                                   "MAY CONTAIN HASELNUSSE * SESAME\n"
                                   "END 2"));
}

TEST_CASE("a dish whose name folds away is still called a dish") {
    Message message;
    message.dish = "(!)";
    CHECK(write(message) == sealed("DISH\nEND 2"));
}

TEST_CASE("what a scanner does to a text is undone") {
    const Message message = folded(squash_stew());
    const std::string text = write(message);
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

TEST_CASE("every prefix of a text is refused") {
    const std::string text = write(squash_stew());
    for (std::size_t length = 0; length < text.size(); ++length) {
        CHECK(!parse(text.substr(0, length)).ok());
    }
}

TEST_CASE("a text with wrong characters is never read as another message") {
    Random random{8};
    const Message message = folded(squash_stew());
    const std::string text = write(message);
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

TEST_CASE("foreign texts are refused, whatever they hold") {
    using Kind = ReadFault::Kind;
    CHECK(fault_kind("") == Kind::Foreign);
    CHECK(fault_kind("\n\n\n") == Kind::Foreign);
    CHECK(fault_kind("https://example.org/END 2ABC") == Kind::Foreign);
    CHECK(fault_kind("END 2ABC") == Kind::Foreign);
    CHECK(fault_kind("STEW\nEND 2ABC") == Kind::Damaged);
    // Their check is right, their lines are not: a text is read only if it is written that way.
    CHECK(fault_kind(sealed("STEW\nHELLO\nEND 2")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nSERVES 06\nEND 2")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nMADE 30 FEB 2026\nEND 2")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nADD SALT\nEND 2")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nCOOK FOR 1-2 DAYS\nEND 2")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nCOOK TO 74.05 C\nEND 2")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nCONTAINS MILK\nTHAW IN REFRIGERATOR\nEND 2")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nTHAW IN REFRIGERATOR\nEND 2")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nTHAW IN REFRIGERATOR ON A TRAY * LOOK FROM 2 H\nEND 2")) ==
          Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nTHAW IN MICROWAVE * COOK WITHIN 2 DAYS\nEND 2")) ==
          Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nCONTAINS MILK\nCAUTION BOIL\nEND 2")) == Kind::Foreign);
    CHECK(fault_kind(sealed("STEW\nLAST 999999999999 MIN ADD SALT\nEND 2")) == Kind::Foreign);
    CHECK(fault_kind(std::string(1 << 20, 'A')) == Kind::Foreign);
    CHECK(fault_kind(std::string(1 << 20, '\n')) == Kind::Foreign);
}

TEST_CASE("bytes of any kind are refused without harm") {
    Random random{9};
    for (int i = 0; i < 3000; ++i) {
        std::string bytes(random.below(200), ' ');
        for (char& byte : bytes) {
            byte = static_cast<char>(random.below(256));
        }
        CHECK(!parse(bytes).ok());
        // With a true check it may be the name of a dish, but then it is written that way.
        const auto read = parse(sealed(bytes + "\nEND 2"));
        CHECK((!read.ok() || reads_as(write(read.value()), read.value())));
    }
}

TEST_CASE("a text of a later grammar is shown all the same") {
    const auto later = parse("]Q1" + sealed("STEW\nSTIR TWICE\nEND 4"));
    REQUIRE(!later.ok());
    CHECK(later.fault().kind == ReadFault::Kind::LaterGrammar);
    CHECK(later.fault().message == "the text is sound, but written in version 4 of the grammar, "
                                   "and this program reads up to version 3");
    CHECK(later.fault().text == sealed("STEW\nSTIR TWICE\nEND 4"));
    CHECK(fault_kind("STEW\nSTIR TWICE\nEND 4ABC") == ReadFault::Kind::Damaged);
}

TEST_CASE("raw food is called raw in every form, and its cautions outlive its steps") {
    Message message = squash_stew();
    message.raw = true;
    const auto forms = texts(message);
    for (std::size_t i = 0; i < forms.size(); ++i) {
        CAPTURE(forms[i]);
        CHECK(forms[i].find("STEW\nRAW") != std::string::npos);
        const bool has_steps = forms[i].find("STEPS ") != std::string::npos;
        const bool has_caution = forms[i].find("CAUTION THAW FULLY") != std::string::npos;
        CHECK((has_caution || !has_steps));
        CHECK((i + 1 == forms.size()) == !has_caution);
        CHECK(parse(forms[i]).value().raw);
    }
}

TEST_CASE("the time that is written counts from how it starts to cook") {
    Message message = squash_stew();
    message.thaw = kitchen::ThawMethod::FromFrozen;
    message.cooking.in = "oven";
    const auto text = write(message);
    CHECK(text.find("DO NOT THAW - COOK FROM FROZEN\n") != std::string::npos);
    CHECK(text.find("FOR 7-9 H FROM FROZEN") != std::string::npos);
    CHECK(text.find("ALLOW") == std::string::npos);
    CHECK(parse(text).value().cooking.time == message.cooking.time);
}

TEST_CASE("every caution in the code is short, in the code's own letters, and stays as it is") {
    std::size_t count = 0;
    for (const auto& rule : kitchen::caution_rules()) {
        const std::string words{rule.in_code};
        if (words.empty()) {
            continue;
        }
        CAPTURE(words);
        ++count;
        CHECK(words.size() <= 40);
        // A slot is filled with a figure: one stands in for it here.
        CHECK(fold(fill(words, {"7", "7", "7"})) == fill(words, {"7", "7", "7"}));
        CHECK(rule.level != kitchen::CautionLevel::Check);
        CHECK(rule.level != kitchen::CautionLevel::Refuse);
    }
    CHECK(count >= 10);
}

TEST_CASE("nothing in a text looks like an address, a scheme, a command or a number to dial") {
    Random random{10};
    for (int i = 0; i < 1000; ++i) {
        Message message = thawslip::test_support::random_message(random);
        message.bag_id = random.chance(2) ? "123-456-789" : "K7Q-2M4-9XC";
        for (const std::string& text : texts(message)) {
            CAPTURE(text);
            REQUIRE(!has_scheme(text));
            REQUIRE(!has_address(text));
            REQUIRE(!looks_like_a_number_to_dial(text));
        }
    }
}

TEST_CASE("whatever is left out of a text, its times to thaw are those of how the bag lies") {
    for (const auto placing :
         {kitchen::Placing::Rack, kitchen::Placing::Tray, kitchen::Placing::Stacked}) {
        Message message = squash_stew();
        message.placing = placing;
        int timed = 0;
        for (const std::string& text : texts(message)) {
            CAPTURE(text);
            const auto read = parse(text);
            REQUIRE(read);
            if (read.value().thaw_time) {
                CHECK(read.value().placing == placing);
                ++timed;
            }
        }
        CHECK(timed >= 2);
    }
}

TEST_CASE("texts get shorter, and keep what keeps people safe until the card must do") {
    Message message = squash_stew();
    message.note = "Good with bread";
    message.thaw_note = "overnight";
    const std::vector<std::string> forms = texts(message);
    REQUIRE(forms.size() == 9);
    CHECK(forms.front() == write(message));
    for (std::size_t i = 0; i < forms.size(); ++i) {
        CAPTURE(forms[i]);
        CHECK(parse(forms[i]).ok());
        CHECK((i == 0 || forms[i].size() < forms[i - 1].size()));
        CHECK((i == 0) == (forms[i].find("SEE CARD") == std::string::npos));
        const auto says = [&](std::string_view words) {
            return forms[i].find(words) != std::string::npos;
        };
        for (const auto safe :
             {"TO 74 C", "CAUTION THAW FULLY", "CONTAINS CELERY", "MAY CONTAIN MUSTARD"}) {
            CHECK((i == 8) != says(safe));
        }
        CHECK((i >= 7) !=
              says("THAW IN REFRIGERATOR ON A TRAY * LOOK FROM 31 H * ALLOW 46 H * COOK WITHIN"));
        CHECK((i >= 6) ==
              (forms[i].find("LAST 10 MIN ADD 200 G BABY SPINACH") == std::string::npos));
        CHECK(forms[i].find("BAG K7Q-2M4-9XC") != std::string::npos);
    }
    CHECK(forms.back() == sealed("SQUASH AND RED LENTIL STEW\nBAG K7Q-2M4-9XC\nSEE CARD * END 2"));
    // A bag that must not thaw says so as long as it says more than what it is.
    message.thaw = thawslip::kitchen::ThawMethod::FromFrozen;
    message.thaw_time.reset();
    message.placing.reset();
    message.cook_within_days.reset();
    message.thaw_note.clear();
    const auto frozen = texts(message);
    CHECK(frozen.at(frozen.size() - 2).find("DO NOT THAW") != std::string::npos);
}

TEST_CASE("the shortest texts with instructions have every addition, and every step or none") {
    Message message = squash_stew();
    message.note = "Good with bread";
    const auto forms = texts(message);
    const auto places = shortest_with_instructions(forms);
    REQUIRE(places.size() == 2);
    const auto says = [&](std::size_t place, std::string_view words) {
        return forms.at(place).find(words) != std::string::npos;
    };
    CHECK(says(places[0], "STIR IN THE STOCK"));
    CHECK_FALSE(says(places[0] + 1, "STIR IN THE STOCK"));
    CHECK(says(places[1], "BABY SPINACH"));
    CHECK_FALSE(says(places[1], "STIR IN THE STOCK"));
    CHECK_FALSE(says(places[1] + 1, "BABY SPINACH"));
    message.steps.clear();
    CHECK(shortest_with_instructions(texts(message)).size() == 1);
    CHECK(shortest_with_instructions({}).empty());
    CHECK(shortest_with_instructions({"NO TEXT OF OURS", "NOR THIS"}) ==
          std::vector<std::size_t>{0});
}

TEST_CASE("a message that has little to leave out has few forms") {
    Message message;
    message.dish = "Stew";
    message.bag_id = "K7Q-2M4-9XC";
    CHECK(texts(message).size() == 1);
}

} // namespace message_test
