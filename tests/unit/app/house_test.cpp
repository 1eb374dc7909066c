// What a desk keeps of the house: its certificate and the phones that were let in.

#include "app/desk/house.h"
#include "base/system_failure.h"
#include "support/command.h"
#include "support/skip.h"
#include "support/variable.h"

#include <doctest/doctest.h>
#include <filesystem>

namespace house_test {

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

const http::Place kitchen{"192.168.1.20", 61722};

struct House {
    ScratchFolder home;
    Variable state{"XDG_STATE_HOME", home.path().string()};
    fs::path kept = home.path() / "thawslip/phones";

    /// Empty where none can be made here, which is said.
    static std::string certificate(const http::Place& place, const std::string& folder) {
        try {
            return app::house_certificate(place, folder);
        } catch (const SystemFailure& failure) {
            REQUIRE(std::string{failure.what()}.find("GnuTLS") != std::string::npos);
            skip(failure.what());
            return {};
        }
    }
    fs::path file(const char* ending) const {
        for (const auto& one : fs::directory_iterator{kept}) {
            if (one.path().extension() == ending) {
                return one.path();
            }
        }
        FAIL("nothing is kept");
        return {};
    }
};

} // namespace

TEST_CASE("a certificate is made once for a folder and an address, for its owner alone") {
    const House house;
    const auto first = House::certificate(kitchen, "/home/orchard");
    if (first.empty()) {
        return;
    }
    CHECK(house.certificate(kitchen, "/home/orchard") == first);
    CHECK(mode_of(house.file(".pem")) == 0600U);
    CHECK(mode_of(house.kept) == 0700U);
    CHECK(house.certificate(kitchen, "/home/barn") != first);
    const auto moved = house.certificate({"192.168.1.21", 61722}, "/home/orchard");
    CHECK(moved != first);
    CHECK(house.certificate({"192.168.1.21", 61722}, "/home/orchard") == moved);
}

TEST_CASE("phones that were let in are known to the next desk of that folder, and to no other") {
    const House house;
    const auto let_in = [](desk::Phones& phones) {
        REQUIRE(phones.pair(phones.offer().code, "Anna's phone").ok());
    };
    const auto phones = app::phones_of_house(kitchen, "/home/orchard", "");
    CHECK(phones->origin() == "http://192.168.1.20:61722");
    CHECK(phones->fingerprint().empty());
    CHECK(phones->all().empty());
    let_in(*phones);
    CHECK(mode_of(house.file(".json")) == 0600U);
    const auto again = app::phones_of_house(kitchen, "/home/orchard", "");
    REQUIRE(again->all().size() == 1);
    CHECK(again->all()[0] == phones->all()[0]);
    CHECK(app::phones_of_house(kitchen, "/home/barn", "")->all().empty());
}

TEST_CASE("what is kept of phones is small: more is none of ours, and is not read") {
    const House house;
    const auto phones = app::phones_of_house(kitchen, "/home/orchard", "");
    REQUIRE(phones->pair(phones->offer().code, "Anna's phone").ok());
    const auto file = house.file(".json").string();
    const auto text = read_file(file);
    constexpr std::size_t most = std::size_t{64} * 1024;
    write_file(file, text + std::string(most - text.size(), ' '));
    CHECK(app::phones_of_house(kitchen, "/home/orchard", "")->all().size() == 1);
    write_file(file, text + std::string(most - text.size() + 1, ' '));
    CHECK_THROWS_AS(app::phones_of_house(kitchen, "/home/orchard", ""), SystemFailure);
}

} // namespace house_test
