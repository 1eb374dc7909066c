// What is printed is large and black enough to read: against the law and the science of reading.

#include "app/files/day_files.h"
#include "files/shelf.h"
#include "layout/compose.h"
#include "service/print/choices.h"
#include "service/print/job.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <set>

using namespace thawslip;
using namespace thawslip::literals;

namespace {

struct SampleDay {
    service::Surroundings around =
        files::surroundings_in([] { return files::DataFolder{THAWSLIP_SOURCE_DIR}; });
    typeset::FontSet fonts = around.fonts();
    std::vector<layout::Layout> layouts = service::shipped_layouts(around.layouts(
        {wording::Kind::BagLabel, wording::Kind::CookDayCard, wording::Kind::DaySheet}));
    service::Settings settings;
    service::Days days =
        app::read_days({THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml"}, settings);

    /// The layouts of a job's prints on a stock; empty where one has none.
    layout::Layouts layouts_for(const service::Job& job, const layout::Stock& stock) const {
        layout::Layouts chosen;
        for (const auto& print : job.prints) {
            if (const auto* layout = service::layout_for(print.kind, stock, layouts)) {
                chosen.emplace(print.kind, *layout);
            } else {
                return {};
            }
        }
        return chosen;
    }

    /// The labels of the sample day on a stock, fitted. \pre the stock takes them
    layout::Fitting labels_on(const layout::Stock& stock) const {
        const auto job = job_of(service::What::Labels, days, settings);
        layout::Medium medium;
        medium.stock = stock;
        auto fitting = layout::fit(service::source_of(job, days, settings), layouts_for(job, stock),
                                   medium, fonts);
        REQUIRE(fitting.ok());
        return std::move(fitting).value();
    }

    /// How large a field stands on a label, in millimetres.
    double x_height_of(const char* field, const layout::FittedPrint& label,
                       const layout::Layout& layout) const {
        const auto* area = layout.area_with(field);
        REQUIRE(area != nullptr);
        const auto forms = forms_in_use(layout, label.contents, label.sizing);
        CHECK((forms[static_cast<std::size_t>(area - layout.areas.data())].has_value() ||
               std::string_view{field} == "finish" || std::string_view{field} == "contains"));
        return x_height_at(*text_of(*area), scale_of(*area, label.sizing)).in_millimetres();
    }

    /// All sheets of a job on a stock; empty where it is refused.
    std::vector<layout::Frame> sheets(const service::Job& job, const layout::Stock& stock) const {
        const auto chosen = layouts_for(job, stock);
        if (chosen.empty()) {
            return {};
        }
        layout::Medium medium;
        medium.stock = stock;
        const auto fitting =
            layout::fit(service::source_of(job, days, settings), chosen, medium, fonts);
        std::vector<layout::Frame> frames;
        for (int sheet = 0; fitting && sheet < fitting.value().sheets; ++sheet) {
            frames.push_back(draw_sheet(fitting.value(), sheet, chosen, medium, fonts));
        }
        return frames;
    }

    /// The height of a lower-case x, measured on its outline in the face that draws the text.
    Length x_height(const layout::Text& text) const {
        const auto& face = fonts.faces[text.run.face];
        double top = 0.0;
        for (const auto& piece : face.outline(face.glyph_of(U'x'))) {
            for (const double y : piece.y) {
                top = std::max(top, y);
            }
        }
        return text.size * top;
    }
};

} // namespace

TEST_CASE_FIXTURE(SampleDay, "no letter is smaller than the law allows, on any stock") {
    // Regulation (EU) 1169/2011, Article 13(2) and Annex IV: x-height of at least 1.2 mm.
    const auto labels = job_of(service::What::Labels, days, settings);
    const auto cards = job_of(service::What::Cards, days, settings);
    int texts = 0;
    for (const auto& stock : shipped_stocks(around)) {
        CAPTURE(stock.name);
        for (const auto* job : {&labels, &cards}) {
            for (const auto& frame : sheets(*job, stock)) {
                for (const auto& item : frame.items) {
                    if (const auto* text = std::get_if<layout::Text>(&item)) {
                        ++texts;
                        CHECK(x_height(*text) >= 1.2_mm - 0.001_mm);
                    }
                }
            }
        }
    }
    CHECK(texts > 1000);
}

TEST_CASE_FIXTURE(SampleDay, "cooking steps on cards are set for a fluent read at arm's length") {
    // Legge and Bigelow, Does print size matter for reading?, Journal of Vision 11(5):8, 2011:
    // fluent from an x-height of 0.2 degrees: 1.40 mm at 40 cm, 2.09 mm at 60 cm.
    const double fluent_at_40_cm = 2 * 400.0 * std::tan(0.1 * 3.14159265358979 / 180.0);
    CHECK(fluent_at_40_cm == doctest::Approx(1.396).epsilon(0.001));
    const auto cards = job_of(service::What::CookDayCards, days, settings);
    const auto stock = around.stock("letter-cards-6x4in-cut");
    REQUIRE(stock);
    int steps = 0;
    for (const auto& frame : sheets(cards, *stock->stock)) {
        for (const auto& item : frame.items) {
            const auto* text = std::get_if<layout::Text>(&item);
            if (text != nullptr && text->run.text.find("cooker") != std::string::npos) {
                ++steps;
                CHECK(x_height(*text).in_millimetres() >= fluent_at_40_cm);
            }
        }
    }
    CHECK(steps > 0);
}

TEST_CASE_FIXTURE(SampleDay,
                  "a label's dish and date are read at arm's length, and the rest in the hand") {
    // Legge and Bigelow (above): 2.09 mm at 60 cm. What is wanted here is ours: more for the dish,
    // for it is read over an open freezer; the body a little more than fluent at 40 cm.
    for (const char* name : {"letter-2x5-4x2in", "a4-2x4-99x68mm"}) {
        CAPTURE(name);
        const auto stock = *around.stock(name)->stock;
        const auto job = job_of(service::What::Labels, days, settings);
        const auto chosen = layouts_for(job, stock);
        const auto& layout = chosen.at(wording::Kind::BagLabel);
        std::set<double> titles;
        for (const auto& label : labels_on(stock).prints) {
            titles.insert(x_height_of("dish", label, layout));
            const bool apart = layout.area_with("limit-date") != nullptr;
            CHECK(x_height_of(apart ? "limit-date" : "use-by", label, layout) >= 2.0);
            CHECK(x_height_of("servings", label, layout) >= 2.0);
            for (const char* body : {"thaw", "finish", "cook", "contains"}) {
                CHECK(x_height_of(body, label, layout) >= 1.5);
            }
        }
        CHECK(titles.size() == 1); // one size a sheet
        CHECK(*titles.begin() >= 2.6);
    }
    const auto large = *around.stock("roll-100x150mm")->stock;
    const auto job = job_of(service::What::Labels, days, settings);
    const auto chosen = layouts_for(job, large);
    const auto& layout = chosen.at(wording::Kind::BagLabel);
    for (const auto& label : labels_on(large).prints) {
        CHECK(x_height_of("thaw", label, layout) >= 2.4);
    }
}

TEST_CASE_FIXTURE(SampleDay, "a long name stays large enough to be read at arm's length") {
    // As above. Forty characters are as many as a name of three or four words has.
    const std::string name = "Parsnip, walnut and rosemary pearl broth";
    REQUIRE(name.size() == 40);
    for (auto& package : days.plans.front().packages) {
        package.package.dish = name;
    }
    for (const char* stock_name : {"letter-2x5-4x2in", "a4-2x4-99x68mm"}) {
        CAPTURE(stock_name);
        const auto stock = *around.stock(stock_name)->stock;
        const auto chosen = layouts_for(job_of(service::What::Labels, days, settings), stock);
        for (const auto& label : labels_on(stock).prints) {
            CHECK(x_height_of("dish", label, chosen.at(wording::Kind::BagLabel)) >= 2.6);
        }
    }
}

TEST_CASE_FIXTURE(
    SampleDay, "every stock for labels takes the sample day, and says what feeds and what warns") {
    const auto job = job_of(service::What::Labels, days, settings);
    int stocks = 0;
    for (const auto& stock : shipped_stocks(around)) {
        const auto chosen = layouts_for(job, stock);
        if (chosen.empty()) {
            continue; // too low, or no label at all
        }
        CAPTURE(stock.name);
        ++stocks;
        const auto& layout = chosen.at(wording::Kind::BagLabel);
        for (const char* field : {"servings", "bag", "note", "contains", "cautions", "mark"}) {
            CAPTURE(field);
            CHECK(layout.area_with(field) != nullptr);
        }
        CHECK(labels_on(stock).prints.size() == 14);
    }
    CHECK(stocks >= 20);
}

TEST_CASE_FIXTURE(SampleDay, "codes are made to last on labels of 4 × 2 in, in every language") {
    for (const char* sample : {"/samples/orchard-day.toml", "/samples/windfall-day.toml"}) {
        for (const char* language : {"en", "es", "de"}) {
            CAPTURE(sample);
            CAPTURE(language);
            settings.language = language;
            days = app::read_days({std::string{THAWSLIP_SOURCE_DIR} + sample}, settings);
            for (const auto& label : labels_on(*around.stock("letter-2x5-4x2in")->stock).prints) {
                REQUIRE(label.symbol.has_value());
                CHECK(label.symbol->symbol.level != code::Level::Low);
                CHECK(label.symbol->module >= 0.5_mm);
            }
        }
    }
}
