// Phones that are let in, locked out, and kept for the next run.

#include "desk/phones/pairing_picture.h"
#include "desk/phones/phones.h"
#include "desk/phones/phones_text.h"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <stdexcept>
#include <string>
#include <vector>

using namespace thawslip;
using desk::NotLetIn;
using desk::Phones;
using std::chrono::seconds;

namespace {

/// A computer whose clock stands, and whose random texts are counted.
struct Computer {
    desk::SteadyTime now{std::chrono::hours{12}};
    int texts = 0;
    std::vector<desk::Phone> kept;
    bool is_full = false;

    desk::PhonePlace place() {
        return {
            "http://192.168.1.20:61722",
            "",
            [this] { return now; },
            [] { return "2026-10-17T12:00:00"; },
            [this] { return fmt::format("{0:08x}{0:08x}{0:08x}{0:08x}", ++texts * 0x0103'0507); },
            [this](const std::vector<desk::Phone>& phones) {
                if (is_full) {
                    throw std::runtime_error{"the disk is full"};
                }
                kept = phones;
            }};
    }
};

NotLetIn why_not(Phones& phones, const std::string& code, const std::string& name) {
    const auto phone = phones.pair(code, name);
    REQUIRE_FALSE(phone);
    return phone.fault();
}

desk::Phone let_in(Phones& phones, const std::string& name) {
    const auto phone = phones.pair(phones.offer().code, name);
    REQUIRE(phone);
    return phone.value();
}

} // namespace

TEST_CASE("a phone is let in by the code that is offered, and known by its key") {
    Computer computer;
    Phones phones{computer.place(), {}};
    CHECK_FALSE(phones.open_offer());
    const auto offer = phones.offer();
    CHECK(offer.link == "http://192.168.1.20:61722/#pair=" + offer.code);
    CHECK(offer.left == seconds{120});
    CHECK(phones.open_offer()->code == offer.code);
    const auto phone = phones.pair(offer.code, "  Ida's phone ");
    REQUIRE(phone);
    CHECK(phone.value().name == "Ida's phone");
    CHECK(phone.value().number == 1);
    CHECK(phone.value().paired == "2026-10-17T12:00:00");
    CHECK(phones.with_key(phone.value().key) == phone.value());
    CHECK_FALSE(phones.with_key(""));
    CHECK_FALSE(phones.with_key(offer.code));
    CHECK_FALSE(phones.open_offer()); // it is used up
    CHECK(computer.kept == phones.all());
}

TEST_CASE("two phones have two keys") {
    Computer computer;
    Phones phones{computer.place(), {}};
    const auto first = let_in(phones, "first");
    const auto second = let_in(phones, "first"); // names are their owners'
    CHECK(first.key != second.key);
    CHECK(phones.with_key(second.key)->number == 2);
}

TEST_CASE("without an offer nobody is let in, nor by the one before") {
    Computer computer;
    Phones phones{computer.place(), {}};
    CHECK(why_not(phones, "", "Ida") == NotLetIn::WrongCode);
    const auto before = phones.offer().code;
    phones.offer();
    CHECK(why_not(phones, before, "Ida") == NotLetIn::WrongCode);
    const auto taken_back = phones.offer().code;
    phones.take_offer_back();
    CHECK(why_not(phones, taken_back, "Ida") == NotLetIn::WrongCode);
    const auto late = phones.offer().code;
    computer.now += seconds{120};
    CHECK(why_not(phones, late, "Ida") == NotLetIn::WrongCode);
    CHECK(phones.all().empty());
}

TEST_CASE("a phone without a name is asked for one, and the code still holds") {
    Computer computer;
    Phones phones{computer.place(), {}};
    const auto code = phones.offer().code;
    for (const std::string name : {"", "   ", "\n\t", "\xE2\x80\x8B", "\xFF"}) {
        CAPTURE(name);
        CHECK(why_not(phones, code, name) == NotLetIn::NoName);
    }
    CHECK(phones.pair(code, "Ida"));
}

TEST_CASE("a name is one line that can be shown") {
    CHECK(desk::phone_name("Ida\r\nBea") == "IdaBea");
    CHECK(desk::phone_name("\x1b[2JIda") == "[2JIda");
    CHECK(desk::phone_name("\xE2\x80\xAEIda") == "Ida"); // U+202E turns the direction
    CHECK(desk::phone_name("Ødegård") == "Ødegård");
    CHECK(desk::phone_name(std::string(1'000, 'x')) == std::string(40, 'x'));
}

TEST_CASE("tries at codes are limited, whichever code is open") {
    Computer computer;
    Phones phones{computer.place(), {}};
    for (int tries = 0; tries < Phones::tries_a_minute; ++tries) {
        if (tries % 4 == 0) {
            phones.offer();
        }
        CHECK(why_not(phones, "0000-0000", "Ida") == NotLetIn::WrongCode);
    }
    const auto code = phones.offer().code;
    CHECK(why_not(phones, code, "Ida") == NotLetIn::TooManyTries);
    computer.now += seconds{60};
    CHECK(phones.pair(code, "Ida")); // it was not used up by what was not tried
}

TEST_CASE("a phone that is locked out is known no longer, and its number is not given again") {
    Computer computer;
    Phones phones{computer.place(), {}};
    const auto first = let_in(phones, "first");
    const auto second = let_in(phones, "second");
    CHECK(phones.revoke(first.number));
    CHECK_FALSE(phones.with_key(first.key));
    CHECK(phones.with_key(second.key));
    CHECK(computer.kept == std::vector{second});
    CHECK_FALSE(phones.revoke(first.number));
    CHECK(let_in(phones, "third").number == 3);
}

TEST_CASE("where nothing can be kept, nobody is let in, and who is locked out stays so") {
    Computer computer;
    Phones phones{computer.place(), {}};
    const auto first = let_in(phones, "first");
    computer.is_full = true;
    const auto code = phones.offer().code;
    CHECK_THROWS_AS(phones.pair(code, "second").ok(), std::runtime_error);
    CHECK(phones.all().size() == 1);
    CHECK_THROWS_AS(phones.revoke(first.number), std::runtime_error);
    CHECK_FALSE(phones.with_key(first.key));
}

TEST_CASE("there are not more phones than a house has") {
    Computer computer;
    Phones phones{computer.place(), {}};
    for (std::size_t number = 0; number < Phones::most; ++number) {
        computer.now += seconds{60};
        let_in(phones, "one more");
    }
    computer.now += seconds{60};
    CHECK(why_not(phones, phones.offer().code, "one too many") == NotLetIn::TooMany);
}

TEST_CASE("phones are read as they were kept") {
    const std::vector<desk::Phone> phones = {
        {1, "Ida's \"phone\"", std::string(32, 'a'), "2026-10-17T12:00:00"},
        {7, "Ødegård", std::string(32, 'b'), "2026-10-18T09:30:00"}};
    CHECK(desk::read_phones(desk::phones_text(phones)) == phones);
    CHECK(desk::read_phones(desk::phones_text({})).empty());
}

TEST_CASE("what is no phone is left out of what was kept") {
    for (const std::string text :
         {"", "{", "{}", "null", "[1]", "[[]]", "[{}]", R"([{"number":1,"name":"x","key":""}])",
          R"([{"number":0,"name":"x","key":"0123456789abcdef0123456789abcdef"}])",
          R"([{"number":1,"name":"","key":"0123456789abcdef0123456789abcdef"}])",
          R"([{"number":"1","name":"x","key":"0123456789abcdef0123456789abcdef"}])",
          R"([{"number":1,"name":"x","key":"0123456789abcdef"}])"}) {
        CAPTURE(text);
        CHECK(desk::read_phones(text).empty());
    }
}

TEST_CASE("a link is drawn as a code in its quiet zone, dark on white") {
    const auto svg = desk::pairing_picture("http://192.168.100.200:61722/#pair=K7QM-3XPA");
    CHECK(svg.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\""));
    CHECK(svg.find("fill=\"#fff\"") != std::string::npos);
    CHECK(svg.find("M4 4h1v1h-1z") != std::string::npos); // the finder's corner, four modules in
    CHECK(svg.find("M3 ") == std::string::npos);
    CHECK(desk::pairing_picture(std::string(9'000, 'x')).empty());
}
