#include "layout/fingerprint.h"

#include <doctest/doctest.h>
#include <functional>
#include <utility>
#include <variant>

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;

namespace {

/// One item of each kind.
Frame drawn() {
    Text text;
    text.run.face = 1;
    text.run.text = "Plum compote";
    text.run.glyphs.resize(2);
    text.run.glyphs[0].id = 7;
    text.size = 12_pt;
    text.baseline = {3_mm, 9_mm};
    Frame frame;
    frame.items = {text, Rule{{{1_mm, 2_mm}, {30_mm, 1_mm}}},
                   Outline{{{4_mm, 5_mm}, {6_mm, 7_mm}}, 1_pt, 2_pt},
                   ModuleGrid{{8_mm, 9_mm}, 1_mm, 2, {true, false, false, true}}};
    return frame;
}

template <class T>
T& item(Frame& frame, std::size_t at) {
    return std::get<T>(frame.items[at]);
}

} // namespace

TEST_CASE("frames that are drawn the same have one fingerprint, of 32 digits") {
    CHECK(fingerprint(drawn()) == fingerprint(drawn()));
    CHECK(fingerprint(drawn()).size() == 32);
}

TEST_CASE("whatever of a drawing differs, its fingerprint does") {
    const std::pair<const char*, std::function<void(Frame&)>> changes[] = {
        {"face", [](Frame& f) { item<Text>(f, 0).run.face = 2; }},
        {"words", [](Frame& f) { item<Text>(f, 0).run.text = "Plum compotes"; }},
        {"glyph", [](Frame& f) { item<Text>(f, 0).run.glyphs[1].id = 1; }},
        {"advance", [](Frame& f) { item<Text>(f, 0).run.glyphs[1].advance += 0.5; }},
        {"offset", [](Frame& f) { item<Text>(f, 0).run.glyphs[1].x_offset += 0.5; }},
        {"height", [](Frame& f) { item<Text>(f, 0).run.glyphs[1].y_offset += 0.5; }},
        {"size", [](Frame& f) { item<Text>(f, 0).size = 13_pt; }},
        {"baseline", [](Frame& f) { item<Text>(f, 0).baseline.y = 10_mm; }},
        {"tone", [](Frame& f) { item<Text>(f, 0).tone = Tone::White; }},
        {"rule", [](Frame& f) { item<Rule>(f, 1).area.size.width = 31_mm; }},
        {"outline", [](Frame& f) { item<Outline>(f, 2).area.size.width = 31_mm; }},
        {"thickness", [](Frame& f) { item<Outline>(f, 2).thickness = 2_pt; }},
        {"corners", [](Frame& f) { item<Outline>(f, 2).corner_radius = 1_pt; }},
        {"place of a code", [](Frame& f) { item<ModuleGrid>(f, 3).top_left.x = 1_mm; }},
        {"module", [](Frame& f) { item<ModuleGrid>(f, 3).module = 2_mm; }},
        {"side", [](Frame& f) { item<ModuleGrid>(f, 3).side = 4; }},
        {"dark", [](Frame& f) { item<ModuleGrid>(f, 3).dark[1] = true; }},
        {"order", [](Frame& f) { std::swap(f.items[1], f.items[2]); }},
    };
    for (const auto& [what, change] : changes) {
        CAPTURE(what);
        auto other = drawn();
        change(other);
        CHECK(fingerprint(other) != fingerprint(drawn()));
    }
}
