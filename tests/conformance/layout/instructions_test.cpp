// A cook with a bag in the hand finds what is added and how it is cooked: on the label, in its
// code, or the label says that it stands on the card. Every dish of the sample days, on every stock
// for labels, in every language.

#include "app/files/day_files.h"
#include "code/message.h"
#include "files/shelf.h"
#include "layout/compose.h"
#include "service/print/choices.h"
#include "service/print/job.h"
#include "wording/phrases.h"
#include "wording/shipped.h"
#include "wording/typography.h"

#include <algorithm>
#include <cctype>
#include <doctest/doctest.h>

using namespace thawslip;

namespace {

const std::vector<std::string> sample_days = {"orchard-day.toml", "windfall-day.toml"};

/// Letters and digits alone: lines are broken where there is room.
std::string bare(const std::string& text) {
    std::string letters;
    for (const char c : wording::typeset_text(text)) {
        if (std::isalnum(static_cast<unsigned char>(c)) != 0) {
            letters += c;
        }
    }
    return letters;
}

std::string words_on(const layout::Frame& frame) {
    std::string words;
    for (const auto& item : frame.items) {
        if (const auto* text = std::get_if<layout::Text>(&item)) {
            words += bare(text->run.text);
        }
    }
    return words;
}

/// One label, as a cook finds it.
struct Found {
    const kitchen::PlannedPackage& planned;
    wording::Style style;
    std::string label;
    code::Message code;

    bool says(const std::string& words) const {
        return label.find(bare(words)) != std::string::npos;
    }
    bool says(const char* key, const std::string& value) const {
        return says(style.say(key, {value}));
    }

    bool tells_additions() const {
        const auto& finish = planned.finish;
        const auto count = std::to_string(finish.size());
        const auto is_on_label = [this](const kitchen::Finish& one) {
            return says(one.add.item.empty() ? one.add.as_written : one.add.item);
        };
        return std::ranges::all_of(finish, is_on_label) || code.additions.size() == finish.size() ||
               says(style.language.say_count("label.one-addition", "label.additions",
                                             finish.size())) ||
               says("label.least-see-card", count);
    }

    /// The cook line sends to the card.
    bool sends_to_card() const {
        const auto& cook = *planned.package.cook;
        if (!cook.until) {
            return says(style.say("label.cook") + " " + style.say("label.see-card")) ||
                   says(style.say("label.steps-see-card"));
        }
        const auto target = say_target(*cook.until, style);
        return says(style.say("label.steps-see-card")) || says("label.until-see-card", target) ||
               says("label.least-see-card", style.say("cook.until-short", {target}));
    }

    bool tells_steps() const {
        const auto& cook = planned.package.cook;
        return !cook || code.steps.size() == cook->steps.size() || sends_to_card();
    }

    bool tells_cooking() const {
        const auto& cook = planned.package.cook;
        return !cook || says(say_cooking(*cook, style)) ||
               (code.cooking.in.empty() == cook->in.empty() &&
                code.cooking.time.has_value() == cook->time.has_value()) ||
               sends_to_card();
    }
};

struct Labels {
    service::Surroundings around =
        files::surroundings_in([] { return files::DataFolder{THAWSLIP_SOURCE_DIR}; });
    typeset::FontSet fonts = around.fonts();
    layout::Shaper shaper{fonts};
    std::vector<layout::Layout> layouts =
        service::shipped_layouts(around.layouts({wording::Kind::BagLabel}));
    service::Settings settings;
    int refused = 0;

    /// One label of each dish, fitted alone: a stock may refuse others.
    std::vector<Found> labels_of(const service::Days& days, const layout::Stock& stock,
                                 const layout::Layout& layout) {
        const auto job = job_of(service::What::Labels, days, settings);
        const auto source = service::source_of(job, days, settings);
        layout::Medium medium;
        medium.stock = stock;
        std::vector<Found> found;
        for (std::size_t i = 0; i < source.count; i += source.alike(i)) {
            const layout::Source one{1, [&](std::size_t) { return source.print(i); },
                                     [&](std::size_t) { return source.code_texts(i); }};
            const auto fitting = fit(one, {{layout.kind, layout}}, medium, shaper);
            if (!fitting) {
                MESSAGE("refused by " << stock.name << ": " << source.print(i).dish);
                ++refused;
                continue;
            }
            const auto& print = fitting.value().prints.front();
            const auto code = code::parse(print.symbol->text);
            REQUIRE(code.ok());
            found.push_back({service::package_of(job.prints[i], days), service::style_of(settings),
                             words_on(draw_alone(print, layout, medium, fonts)), code.value()});
        }
        return found;
    }
};

} // namespace

TEST_CASE_FIXTURE(Labels, "a label or its code says what is added and how it is cooked, or the "
                          "label sends to the card") {
    int looked_at = 0;
    int whole_codes = 0;
    for (const auto& sample : sample_days) {
        CAPTURE(sample);
        for (const char* language : {"en", "es", "de"}) {
            CAPTURE(language);
            settings.language = language;
            const auto days =
                app::read_days({std::string{THAWSLIP_SOURCE_DIR "/samples/"} + sample}, settings);
            for (const auto& stock : shipped_stocks(around)) {
                CAPTURE(stock.name);
                const auto* layout = service::layout_for(wording::Kind::BagLabel, stock, layouts);
                if (layout == nullptr) {
                    continue;
                }
                for (const auto& found : labels_of(days, stock, *layout)) {
                    CAPTURE(found.planned.package.dish);
                    CAPTURE(found.label);
                    CHECK(found.tells_additions());
                    CHECK(found.tells_steps());
                    CHECK(found.tells_cooking());
                    const auto& cook = found.planned.package.cook;
                    whole_codes +=
                        cook && !cook->steps.empty() && !found.code.steps.empty() ? 1 : 0;
                    ++looked_at;
                }
            }
        }
    }
    MESSAGE(looked_at << " labels, " << whole_codes << " codes with steps");
    CHECK(looked_at > 500);
    CHECK(refused == 0); // every stock takes every dish of these days
}
