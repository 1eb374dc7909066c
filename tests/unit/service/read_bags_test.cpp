#include "code/seal.h"
#include "kitchen/bag_id.h"
#include "service/read/read_bags.h"
#include "service/settings.h"

#include <doctest/doctest.h>

using namespace thawslip;

namespace {

wording::Style style() {
    return style_of(service::Settings{});
}

std::string code_naming(const std::string& dish) {
    code::Message message;
    message.dish = dish;
    message.bag_id = kitchen::bag_id({dish, std::chrono::year{2026} / 10 / 17, 1});
    message.servings = 4;
    return code::write(message);
}

} // namespace

TEST_CASE("a scanner's texts are parted by empty lines") {
    CHECK(service::typed_texts("a\nb\n\nc\n").size() == 2);
    CHECK(service::typed_texts("a\nb\n\nc\n")[0] == "a\nb");
    CHECK(service::typed_texts("\n\n\n\nc").back() == "c");
    CHECK(service::typed_texts("").empty());
}

TEST_CASE("codes are read without an archive, what is none of ours is said, the others are read") {
    const std::vector texts{code_naming("Barley stew"), std::string{"https://example.org"},
                            code_naming("Plum compote")};
    CHECK_FALSE(service::name_bags(texts));
    const auto readings = service::read_texts(nullptr, texts, style());
    REQUIRE(readings.bags.size() == 2);
    CHECK(std::get<code::Message>(readings.bags[0]).dish == "BARLEY STEW");
    CHECK(std::get<code::Message>(readings.bags[1]).servings == 4);
    REQUIRE(readings.messages.all().size() == 1);
    CHECK(readings.messages.have_errors());
}

TEST_CASE("a bag's id among the texts asks the archive") {
    const auto id = kitchen::bag_id({"Barley stew", std::chrono::year{2026} / 10 / 17, 1});
    const std::vector texts{id};
    CHECK(service::name_bags(texts));
    const auto readings = service::read_texts(nullptr, texts, style());
    CHECK(readings.bags.empty());
    CHECK(to_text(readings.messages) ==
          "error: nothing has been printed yet, so no bag is known\n");
}

TEST_CASE("a label of a later Thawslip keeps its words, with a caution") {
    std::string words = "BARLEY STEW\nSTIR TWICE\nEND 4";
    words += code::check_characters(words);
    const auto later = "]Q1" + words;
    const std::vector texts{later};
    const auto readings = service::read_texts(nullptr, texts, style());
    REQUIRE(readings.bags.size() == 1);
    CHECK(std::get<service::LaterWords>(readings.bags[0]).text == words);
    CHECK_FALSE(readings.messages.have_errors());
    CHECK(readings.messages.all().size() == 1);
}

TEST_CASE("what is no photograph is refused under its name") {
    const auto texts = service::texts_in_photo("no picture", "label.png");
    CHECK_FALSE(texts);
    CHECK(to_text(texts.messages).starts_with("label.png: error: "));
}
