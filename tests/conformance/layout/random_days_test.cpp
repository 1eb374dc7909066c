// Thousands of random labels and cards on every shipped stock: whatever comes out is whole, inside
// its cell, and nothing touches; or it is refused.

#include "base/utf8.h"
#include "code/message.h"
#include "files/shelf.h"
#include "intake/storage_file.h"
#include "layout/compose.h"
#include "service/print/choices.h"
#include "support/random.h"
#include "wording/prints.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <map>
#include <string>

using namespace thawslip;
using namespace thawslip::literals;
using test_support::Random;

namespace {

const std::vector<std::string> words = {"apple",
                                        "sage",
                                        "squash",
                                        "lentil",
                                        "chestnut",
                                        "kale",
                                        "barley",
                                        "plum",
                                        "ginger",
                                        "quince",
                                        "leek",
                                        "bean",
                                        "smoky",
                                        "jalapeño",
                                        "crème",
                                        "Grünkohl",
                                        "σούπα",
                                        "борщ",
                                        "½",
                                        "74 °C",
                                        "slow",
                                        "slow-roast",
                                        "and",
                                        "with",
                                        "Pommes-Frites-Auflauf",
                                        "pomegranate-walnut",
                                        "1 l",
                                        "x",
                                        "Přesnídávka",
                                        "žluťoučký"};

int between(Random& random, int low, int high) {
    return low + static_cast<int>(random.below(static_cast<std::size_t>(high - low + 1)));
}

std::string phrase(Random& random, int most) {
    std::string text;
    const int count = between(random, 1, most);
    for (int i = 0; i < count; ++i) {
        text += (i == 0 ? "" : " ") + words[random.below(words.size())];
    }
    return text;
}

kitchen::When random_when(Random& random) {
    using Anchor = kitchen::When::Anchor;
    const auto anchor = static_cast<Anchor>(random.below(5));
    const bool timed = anchor == Anchor::AfterStart || anchor == Anchor::BeforeEnd;
    return {anchor, std::chrono::minutes{timed ? between(random, 5, 90) : 0}};
}

kitchen::Package random_package(Random& random, int number) {
    using namespace std::chrono_literals;
    kitchen::Package package;
    package.dish = phrase(random, 6) + " " + std::to_string(number);
    package.servings = between(random, 1, 40);
    package.bags = between(random, 1, 3);
    package.use_by = std::chrono::year{2027} / between(random, 1, 12) / between(random, 1, 28);
    package.thaw.method = static_cast<kitchen::ThawMethod>(random.below(4));
    for (int i = between(random, 0, 5); i > 0; --i) {
        kitchen::Finish finish;
        finish.add.as_written = phrase(random, 6);
        finish.add.item = finish.add.as_written;
        finish.when = random_when(random);
        finish.bag = random.below(3) == 0 ? phrase(random, 5) : "";
        package.finish.push_back(std::move(finish));
    }
    if (random.below(5) != 0) {
        kitchen::Cook cook;
        cook.in = phrase(random, 2);
        cook.setting = random.below(2) == 0 ? phrase(random, 2) : "";
        cook.time = kitchen::TimeRange{30min, std::chrono::minutes{between(random, 30, 600)}};
        cook.until = kitchen::Temperature{82.0, kitchen::TemperatureScale::Celsius};
        for (int i = between(random, 0, 12); i > 0; --i) {
            cook.steps.push_back(phrase(random, 24));
        }
        package.cook = std::move(cook);
    }
    for (int i = between(random, 0, 3); i > 0; --i) {
        package.contains.push_back(words[random.below(words.size())]);
    }
    package.note = random.below(3) == 0 ? phrase(random, 14) : "";
    return package;
}

/// A print and what its code may say.
struct Whole {
    wording::Print print;
    std::vector<std::string> code_texts;
};

layout::Source only(const Whole& whole) {
    return {1, [&](std::size_t) { return whole.print; },
            [&](std::size_t) { return whole.code_texts; }};
}

std::vector<Whole> random_prints(Random& random, int dishes) {
    kitchen::Day day;
    day.made = std::chrono::year{2026} / 10 / 17;
    day.kitchen = phrase(random, 3);
    for (int i = 0; i < dishes; ++i) {
        day.packages.push_back(random_package(random, i));
    }
    Diagnostics faults;
    const auto plan = kitchen::plan(day, {}, faults);
    const auto style = wording::style_for(wording::shipped_language("en"), {});
    std::vector<Whole> prints;
    for (const auto& planned : plan.packages) {
        const auto& bag = planned.bags.front();
        const auto texts = code::texts(code::message_for(planned, bag));
        prints.push_back({bag_label(plan, planned, bag, style), texts});
        prints.push_back({cook_day_card(plan, planned, style), texts});
        if (!planned.finish.empty()) {
            prints.push_back({finishing_card(plan, planned, bag, style), {}});
        }
    }
    return prints;
}

/// How often each character stands in a text, spaces and joiners left out.
using Letters = std::map<char32_t, int>;

void count(Letters& letters, const std::string& text) {
    for (std::size_t at = 0; at < text.size();) {
        const char32_t c = next_code_point(text, at);
        if (c != U' ' && c != U'\u2060' && c != U'\u00A0') {
            ++letters[c];
        }
    }
}

/// What a print says in the areas that its layout has and that were not left out.
Letters wanted_letters(const wording::Print& print, const layout::FittedPrint& fitted,
                       const layout::Layout& layout) {
    Letters letters;
    const auto forms = forms_in_use(layout, fitted.contents, fitted.sizing);
    for (std::size_t i = 0; i < layout.areas.size(); ++i) {
        const auto* text = text_of(layout.areas[i]);
        const bool heads_lines = std::holds_alternative<layout::WriteArea>(layout.areas[i].kind);
        if (!forms[i] || text == nullptr || heads_lines) { // which may find no room
            continue;
        }
        for (const auto& name : text->words) {
            if (const auto* field = print.field(name)) {
                for (const auto& paragraph : field->said(*forms[i])) {
                    count(letters, paragraph.label);
                    for (const auto& span : paragraph.spans) {
                        count(letters, span.text);
                    }
                }
            }
        }
    }
    return letters;
}

struct Boxes {
    std::vector<Rect> text;
    std::vector<Rect> other;  ///< rules and tick boxes
    std::vector<Rect> codes;  ///< with their quiet zone: ISO/IEC 18004, four modules
    std::vector<Rect> around; ///< frames, and black fields: words may stand inside
    Letters letters;
};

/// Whether some text stands white in a black field.
bool white_inside(const layout::Frame& frame, const Rect& field) {
    return std::ranges::any_of(frame.items, [&field](const layout::Item& item) {
        const auto* text = std::get_if<layout::Text>(&item);
        return text != nullptr && text->tone == layout::Tone::White &&
               field.contains({text->baseline, {}});
    });
}

/// A line of text takes from an accented capital's top to a descender's bottom; what counts for
/// touching is the body of the letters.
Boxes boxes_in(const layout::Frame& frame, const Rect& cell) {
    Boxes boxes;
    const auto keep = [&cell](const Rect& box) {
        const Point middle{box.left() + box.size.width / 2, box.top() + box.size.height / 2};
        return cell.contains({middle, {}});
    };
    for (const auto& item : frame.items) {
        if (const auto* text = std::get_if<layout::Text>(&item)) {
            const Rect box{{text->baseline.x, text->baseline.y - text->size * 0.70},
                           {text->size * text->run.width(), text->size * 0.88}};
            if (keep(box)) {
                boxes.text.push_back(box);
                count(boxes.letters, text->run.text);
            }
        } else if (const auto* rule = std::get_if<layout::Rule>(&item)) {
            if (keep(rule->area)) {
                const bool is_field = white_inside(frame, rule->area);
                (is_field ? boxes.around : boxes.other).push_back(rule->area);
            }
        } else if (const auto* outline = std::get_if<layout::Outline>(&item)) {
            if (keep(outline->area)) {
                boxes.around.push_back(outline->area.inset(outline->thickness / 2));
            }
        } else if (const auto* grid = std::get_if<layout::ModuleGrid>(&item)) {
            const Rect square{grid->top_left,
                              {grid->module * grid->side, grid->module * grid->side}};
            if (keep(square)) {
                boxes.codes.push_back(square.inset(-(grid->module * code::quiet_zone_modules)));
            }
        }
    }
    return boxes;
}

/// Whether a frame or field that the text stands in takes all of it.
bool stands_in(const Rect& text, const Rect& around) {
    return around.contains(text, 0.05_mm);
}

/// The first two boxes that overlap by more than a hair, in words; empty when none do.
std::string touching(const Boxes& boxes) {
    constexpr auto hair = 0.05_mm;
    for (std::size_t i = 0; i < boxes.text.size(); ++i) {
        for (std::size_t j = i + 1; j < boxes.text.size(); ++j) {
            if (boxes.text[i].overlaps(boxes.text[j], hair)) {
                return "two texts";
            }
        }
        for (const auto& around : boxes.around) {
            if (boxes.text[i].overlaps(around, hair) && !stands_in(boxes.text[i], around)) {
                return "a text and its frame";
            }
        }
        for (const auto& other : boxes.other) {
            if (boxes.text[i].overlaps(other, hair)) {
                return "a text and a rule or box";
            }
        }
    }
    for (const auto& code : boxes.codes) {
        for (const auto* inked : {&boxes.text, &boxes.other}) {
            if (std::ranges::any_of(*inked,
                                    [&](const Rect& box) { return box.overlaps(code, hair); })) {
                return "something and a code's quiet zone";
            }
        }
    }
    return {};
}

} // namespace

TEST_CASE("random days on every stock: all words there, nothing touches, nothing leaves its cell") {
    const auto around =
        files::surroundings_in([] { return files::DataFolder{THAWSLIP_SOURCE_DIR}; });
    const auto fonts = around.fonts();
    const auto layouts = service::shipped_layouts(around.layouts(
        {wording::Kind::BagLabel, wording::Kind::FinishingCard, wording::Kind::DaySheet}));
    Random random{20261017};
    int printed = 0;
    int refused = 0;
    for (const auto& stock : shipped_stocks(around)) {
        CAPTURE(stock.name);
        for (const auto& whole : random_prints(random, 12)) {
            const auto& print = whole.print;
            CAPTURE(print.dish);
            const auto* layout = service::layout_for(print.kind, stock, layouts);
            if (layout == nullptr) {
                continue;
            }
            layout::Medium medium;
            medium.stock = stock;
            medium.stock.cut = false;
            const layout::Layouts chosen{{print.kind, *layout}};
            const auto fitting = layout::fit(only(whole), chosen, medium, fonts);
            if (!fitting) {
                ++refused;
                continue;
            }
            Letters letters;
            for (std::size_t card = 0; card < fitting.value().prints.size(); ++card) {
                const auto place = fitting.value().places[card];
                const auto frame = draw_sheet(fitting.value(), place.sheet, chosen, medium, fonts);
                const auto boxes = boxes_in(frame, stock.part_at(place.cell, place.part));
                const auto safe = stock.safe_at(place.cell, place.part);
                CHECK(touching(boxes) == "");
                for (const auto& box : boxes.text) {
                    CHECK(safe.contains(box, 0.05_mm));
                }
                for (const auto* inked : {&boxes.other, &boxes.codes}) {
                    for (const auto& box : *inked) {
                        CHECK(safe.contains(box, 0.05_mm));
                    }
                }
                for (const auto& [letter, times] : boxes.letters) {
                    letters[letter] += times;
                }
            }
            for (const auto& [letter, times] :
                 wanted_letters(print, fitting.value().prints.front(), *layout)) {
                CAPTURE(to_utf8(std::u32string(1, letter)));
                CHECK(letters[letter] >= times);
            }
            ++printed;
        }
    }
    CHECK(printed > 500);
    CHECK(refused > 50); // the small stocks cannot take everything, and must say so
}

TEST_CASE("a code keeps its quiet zone on prints that say little") {
    const auto around =
        files::surroundings_in([] { return files::DataFolder{THAWSLIP_SOURCE_DIR}; });
    const auto fonts = around.fonts();
    const auto layouts = service::shipped_layouts(
        around.layouts({wording::Kind::BagLabel, wording::Kind::CookDayCard}));
    kitchen::Day day;
    day.made = std::chrono::year{2026} / 10 / 17;
    for (const char* dish : {"Plum compote", "Quince and ginger compote with a long name"}) {
        auto& package = day.packages.emplace_back(); // no allergens, and nothing to mind
        package.dish = dish;
        package.servings = 8;
        package.bags = 1;
        package.food = {"fruit"};
        package.thaw.method = kitchen::ThawMethod::Microwave;
        package.cook = kitchen::Cook{};
        package.cook->in = "pan";
    }
    Diagnostics faults;
    const auto plan = kitchen::plan(day, intake::built_in_storage(), faults);
    const auto style = wording::style_for(wording::shipped_language("en"), {});
    int codes = 0;
    for (const auto& stock : shipped_stocks(around)) {
        CAPTURE(stock.name);
        for (const auto& planned : plan.packages) {
            const auto& bag = planned.bags.front();
            const auto texts = code::texts(code::message_for(planned, bag));
            for (const auto& whole : {Whole{bag_label(plan, planned, bag, style), texts},
                                      Whole{cook_day_card(plan, planned, style), texts}}) {
                const auto* layout = service::layout_for(whole.print.kind, stock, layouts);
                if (layout == nullptr) {
                    continue;
                }
                layout::Medium medium;
                medium.stock = stock;
                medium.stock.cut = false;
                const layout::Layouts chosen{{whole.print.kind, *layout}};
                const auto fitting = layout::fit(only(whole), chosen, medium, fonts);
                if (!fitting) {
                    continue;
                }
                const auto place = fitting.value().places.front();
                const auto boxes =
                    boxes_in(draw_sheet(fitting.value(), place.sheet, chosen, medium, fonts),
                             stock.part_at(place.cell, place.part));
                CHECK(touching(boxes) == "");
                codes += static_cast<int>(boxes.codes.size());
            }
        }
    }
    CHECK(codes > 60);
}
