// What is strong stands out of the words beside it, in an area of any weight: so the names of two
// dishes that look alike are told apart by the words in which they differ.

#include "labels.h"

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;

namespace {

/// The face of the drawn text that holds each of the words, in an area of this weight.
std::vector<typeset::FaceId> faces_of(const std::string& weight,
                                      const std::vector<wording::Span>& spans,
                                      const std::vector<std::string>& words) {
    const auto layout = testing::layout_from(
        "print = \"bag label\"\npicture = [\"dish\"]\n[area]\ndish = { words = \"dish\", weight = "
        "\"" +
        weight + "\", x_height = [\"1.2 mm\", \"1.5 mm\", \"1.9 mm\"] }\n");
    wording::Print print;
    print.fields = {testing::field("dish", {""})};
    print.fields.front().paragraphs.front().spans = spans;
    const auto contents = testing::shaped(print, layout);
    const auto& area = layout.areas.front();
    const auto type = type_at(area, {1.0}, testing::fonts());
    std::vector<typeset::FaceId> faces;
    for (const auto& word : words) {
        for (const auto& item :
             draw(contents.front(), area, type, {{0_mm, 0_mm}, {200_mm, 20_mm}})) {
            const auto* text = std::get_if<Text>(&item);
            if (text != nullptr && text->run.text.find(word) != std::string::npos) {
                faces.push_back(text->run.face);
                break;
            }
        }
    }
    REQUIRE(faces.size() == words.size());
    return faces;
}

constexpr auto strong = wording::Emphasis::Strong;
constexpr auto plain = wording::Emphasis::Plain;

} // namespace

TEST_CASE("words that differ stand out of the shared ones in an area of any weight") {
    const auto bold = faces_of("bold", {{"Stew", plain}}, {"Stew"}).front();
    for (const std::string weight : {"regular", "medium", "bold"}) {
        CAPTURE(weight);
        const auto faces =
            faces_of(weight, {{"Squash stew, ", plain}, {"mild", strong}}, {"Squash", "mild"});
        CHECK(faces[0] != faces[1]);
        CHECK(faces[1] == bold);
    }
}

TEST_CASE("without a word that differs, a bold area's words are bold") {
    const auto faces = faces_of("bold", {{"Squash stew", plain}}, {"Squash"});
    CHECK(faces == faces_of("regular", {{"Squash stew", strong}}, {"Squash"}));
}
