#include "code/message.h"
#include "code/picture.h"
#include "code/seal.h"
#include "code/symbol.h"
#include "support/asked.h"
#include "support/printed_days.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

struct BagRoutes : PrintedDay {
    json::Json read(const json::Json& body, int status = 200) {
        return ask("/api/read", body, status);
    }
};

std::string code_of(const std::string& dish, const std::string& id) {
    code::Message message;
    message.dish = dish;
    message.bag_id = id;
    message.servings = 4;
    return code::write(message);
}

http::Request frame_request(const std::string& width, const std::string& height,
                            const std::string& bytes) {
    auto asked = request(http::Method::Post, "/api/read", bytes);
    asked.query = {{"as", "frame"}, {"width", width}, {"height", height}};
    return asked;
}

} // namespace

TEST_CASE("a bag is read by its id as people type it, in full") {
    BagRoutes printed;
    const auto bag = printed.bag("squash");
    auto typed = " " + bag.id + " ";
    std::erase(typed, '-');
    const auto answer = printed.read({{"typed", typed}});
    CHECK(answer["today"] == "2026-10-17"); // a page may stand open for days
    REQUIRE(answer["bags"].size() == 1);
    const auto& read = answer["bags"][0];
    CHECK(read["id"] == bag.id);
    CHECK(read["dish"] == "Squash and red lentil stew");
    CHECK(read["known"] == true);
    CHECK(read["state"] == "frozen");
    CHECK_FALSE(read.contains("code"));
    CHECK(read["cautions"].size() >= 1);
    CHECK(read["words"].size() > 8);
    // The rules of the place come first: the last thing that is said of every bag.
    CHECK(read["words"].back() == style_of(printed.fake.settings).say("standing.local-rules"));
}

TEST_CASE("a bag that is known is read in the kitchen's measures, as its plan is") {
    BagRoutes printed;
    printed.fake.settings.kitchen.units = kitchen::Units::Us;
    const auto read = printed.read({{"typed", "squash"}})["bags"][0];
    const auto words = read["words"].dump();
    CAPTURE(words);
    CHECK(words.find("4¼ cups vegetable stock") != std::string::npos);
    CHECK(words.find("1 l ") == std::string::npos);
    CHECK(words.find("165 °F") != std::string::npos);
    CHECK(words.find("74 °C") == std::string::npos);
}

TEST_CASE("words read one bag of the dish that they fit, and of several they are asked back") {
    BagRoutes printed;
    CHECK(printed.read({{"typed", "lentil"}})["bags"][0]["dish"] == "Squash and red lentil stew");
    const auto asked = printed.read({{"typed", "and"}});
    CHECK(asked["bags"].empty());
    REQUIRE(asked["choices"].size() > 3);
    for (std::size_t i = 1; i < asked["choices"].size(); ++i) {
        CHECK(asked["choices"][i - 1]["keep_until"] <= asked["choices"][i]["keep_until"]);
    }
    const auto unknown = printed.read({{"typed", "lentl"}}, 422);
    CHECK(unknown["messages"][0]["hints"].size() == 1);
    printed.read({{"typed", "Grünkohl"}}, 422);
    printed.read({{"typed", ""}}, 422);
    printed.read({{"typed", 3}}, 400);
}

TEST_CASE("several ids are read each, with a comma between or without") {
    BagRoutes printed;
    const auto stew = printed.bag("squash").id;
    const auto pork = printed.bag("pork").id;
    for (const auto* between : {" ", ", ", ","}) {
        CAPTURE(between);
        const auto answer = printed.read({{"typed", stew + between + pork}});
        REQUIRE(answer["bags"].size() == 2);
        CHECK(answer["bags"][0]["id"] == stew);
        CHECK(answer["bags"][1]["id"] == pork);
        CHECK(answer["messages"].empty());
    }
    CHECK(printed.read({{"typed", stew + ", pork"}})["bags"].size() == 2);
    const auto half = printed.read({{"typed", stew + ", nothing of that kind"}});
    CHECK(half["bags"].size() == 1);
    CHECK(half["messages"].size() == 1);
    printed.ask("/api/freezer/note", {{"bags", {pork}}, {"state", "out"}});
    const auto out = printed.read({{"typed", stew + " " + pork}})["messages"];
    REQUIRE(out.size() == 1);
    CHECK(out[0]["text"].get<std::string>().starts_with(pork + ": ")); // which of them
}

TEST_CASE("the text of a code is read, known to the archive or not, and kept beside") {
    BagRoutes printed;
    const auto bag = printed.bag("squash");
    const auto known = printed.read({{"typed", code_of(bag.dish, bag.id)}});
    CHECK(known["bags"][0]["known"] == true);
    CHECK(known["bags"][0]["code"] == code_of(bag.dish, bag.id));
    CHECK(known["messages"].empty());
    const auto strange = printed.read({{"typed", code_of("Barley stew", "K7Q-2M4-9XC") + "\n"}});
    CHECK(strange["bags"][0]["known"] == false);
    CHECK_FALSE(strange["bags"][0].contains("state"));
    auto damaged = code_of("Barley stew", "K7Q-2M4-9XC");
    damaged[0] = 'X';
    printed.read({{"typed", damaged}}, 422);
}

TEST_CASE("a label of a later program is read for its words, and the rules of the place are said") {
    BagRoutes printed;
    const std::string words = "BARLEY STEW\nSTIR TWICE\nEND 4"; // no grammar that is known
    const auto later = words + code::check_characters(words);
    const auto answer = printed.read({{"typed", later}});
    REQUIRE(answer["bags"].size() == 1);
    const auto& bag = answer["bags"][0];
    CHECK(bag["known"] == false);
    CHECK(bag["code"] == later);
    REQUIRE(bag["words"].size() == 4);
    CHECK(bag["words"][0] == "BARLEY STEW");
    CHECK(bag["words"][1] == "STIR TWICE");
    CHECK(bag["words"][3] == style_of(printed.fake.settings).say("standing.local-rules"));
    REQUIRE(answer["messages"].size() == 1);
    CHECK(answer["messages"][0]["text"].get<std::string>().find("version 4") != std::string::npos);
}

TEST_CASE("before anything was printed a code is read all the same, an id is not known") {
    FakeMachine fake;
    desk::Desk desk{machine_of(fake)};
    const auto read = [&desk](const std::string& typed) {
        return post(desk, "/api/read", {{"typed", typed}});
    };
    const auto strange = said(read(code_of("Barley stew", "K7Q-2M4-9XC")));
    CHECK(strange["bags"][0]["id"] == "K7Q-2M4-9XC");
    CHECK(strange["bags"][0]["known"] == false);
    CHECK(read("K7Q-2M4-9XC").status == 422);
    CHECK_FALSE(std::filesystem::exists(fake.archive_file()));
}

TEST_CASE("a label that the archive has otherwise is told to be old") {
    BagRoutes printed;
    const auto bag = printed.bag("squash");
    code::Message old;
    old.dish = bag.dish;
    old.bag_id = bag.id;
    old.keep_until = {std::chrono::year{2027} / 2 / 1, kitchen::DateBasis::SetByCook};
    const auto answer = printed.read({{"typed", code::write(old)}});
    REQUIRE(answer["messages"].size() == 1);
    CHECK(answer["messages"][0]["text"].get<std::string>().starts_with(
        "this is an old label of bag " + bag.id + ": it says use by 2027-02-01, and the archive "));
}

TEST_CASE("a bag that was taken out is cautioned about, by whichever way it is read") {
    BagRoutes printed;
    const auto bag = printed.bag("squash");
    printed.of(post(printed.desk, "/api/freezer/note", {{"bags", {bag.id}}, {"state", "eaten"}}));
    for (const auto& typed : {bag.id, code_of(bag.dish, bag.id)}) {
        const auto answer = printed.read({{"typed", typed}});
        REQUIRE(answer["messages"].size() == 1);
        CHECK(answer["messages"][0]["text"].get<std::string>().starts_with(
            bag.id + ": this bag is known as eaten"));
        CHECK(answer["bags"][0]["state"] == "eaten");
    }
}

TEST_CASE("a photograph's codes are read, the sound ones beside what is none of ours") {
    BagRoutes printed;
    const auto bag = printed.bag("compote");
    printed.fake.photo_texts = {code_of(bag.dish, bag.id), "https://example.org", bag.id};
    auto asked = request(http::Method::Post, "/api/read", "a picture");
    asked.query = {{"as", "photo"}};
    const auto answer = printed.of(printed.desk.answer(asked));
    CHECK(answer["bags"].size() == 2);
    CHECK(answer["messages"].size() == 1);
    asked.query = {{"as", "x-ray"}};
    printed.of(printed.desk.answer(asked), 400);
}

TEST_CASE("a frame of a camera is looked at quickly") {
    BagRoutes printed;
    const auto bag = printed.bag("squash");
    const auto symbol = code::choose_symbol({code_of(bag.dish, bag.id)}, Length::millimetres(40),
                                            {}, Length::millimetres(0.5))
                            .value()
                            .symbol;
    if (!code::can_read_back()) {
        MESSAGE("skipped: built without a reader of codes");
        return;
    }
    const auto picture = code::picture_of(symbol, 5);
    const std::string bytes{picture.pixels.begin(), picture.pixels.end()};
    const auto side = std::to_string(picture.width);
    const auto answer = printed.of(printed.desk.answer(frame_request(side, side, bytes)));
    CHECK(answer["bags"][0]["id"] == bag.id);
    const auto nothing =
        printed.of(printed.desk.answer(frame_request("64", "48", std::string(64 * 48, '\x90'))));
    CHECK(nothing == json::Json{{"found", false}});
}

TEST_CASE("a frame whose size is not that of its bytes is refused") {
    BagRoutes printed;
    for (const auto& [width, height] :
         std::initializer_list<std::pair<const char*, const char*>>{{"64", "47"},
                                                                    {"0", "0"},
                                                                    {"-64", "-48"},
                                                                    {"", "48"},
                                                                    {"64x", "48"},
                                                                    {"99999999999", "1"},
                                                                    {"65536", "65536"}}) {
        printed.of(printed.desk.answer(frame_request(width, height, std::string(64 * 48, 'a'))),
                   400);
    }
    // The largest frame that is read is 1920 by 1080.
    CHECK(printed.of(printed.desk.answer(frame_request("1", "16", std::string(16, '\x90')))) ==
          json::Json{{"found", false}});
    printed.of(printed.desk.answer(frame_request("3000", "1000", std::string(3'000'000, 'a'))),
               400);
}
