// A dinner's plan on sheets: all of it, on as few as it can be read on.

#include "days.h"
#include "service/dinner/plan_parts.h"
#include "service/dinner/plan_sheet.h"
#include "surroundings.h"
#include "wording/late_dish.h"
#include "wording/plan_order.h"
#include "wording/time_chart.h"
#include "wording/timeline_words.h"

#include <algorithm>

using namespace thawslip;
using namespace thawslip::test_support;
using namespace std::chrono_literals;

namespace {

const auto supper = std::chrono::local_days{std::chrono::year{2026} / 12 / 3} + 18h + 30min;

const service::Settings& settings() {
    static const service::Settings usual;
    return usual;
}

service::DinnerPlan plan_of(const std::string& day, std::chrono::minutes before_supper) {
    const kitchen::Instant now{supper.time_since_epoch() - before_supper};
    auto plan =
        service::dinner_plan(packages_of(day), {"", supper, now, {}, {}}, style_of(settings()));
    REQUIRE(plan);
    return std::move(*plan.value);
}

/// A world with a stock of one cell of this size, and the layout of plans.
service::Surroundings world(const std::string& width, const std::string& height) {
    auto around = surroundings();
    const auto text = "cell = [\"" + width + "\", \"" + height + "\"]\nroll = true\n";
    around.stock = [text](const std::string&) {
        return std::optional{layout::read_stock(text, "page.toml", "page")};
    };
    around.layouts = [](const std::set<wording::Kind>&) {
        return std::vector<service::ShippedText>{
            {"plan", "plan.toml", shipped_text("list/plan.toml")}};
    };
    return around;
}

service::Outcome<service::Printing> sheets(const service::DinnerPlan& plan,
                                           const std::string& width = "216 mm",
                                           const std::string& height = "279 mm") {
    return plan_sheet(plan, {}, settings(), world(width, height));
}

/// All words of a sheet, with spaces between its lines.
std::string words_on(const service::Printing& printing) {
    std::string words;
    for (int sheet = 0; sheet < printing.laid_out.fitting.sheets; ++sheet) {
        for (const auto& item : draw_sheet(printing.laid_out, sheet).items) {
            if (const auto* text = std::get_if<layout::Text>(&item)) {
                words += text->run.text + " ";
            }
        }
    }
    return words;
}

/// Words as they can be compared, wherever their lines were broken.
std::string bare(std::string words) {
    for (const std::string space : {"\u00a0", "\u202f", "\u2060", " "}) {
        for (auto at = words.find(space); at != std::string::npos; at = words.find(space, at)) {
            words.erase(at, space.size());
        }
    }
    return words;
}

bool says(const service::Printing& printing, const std::string& words) {
    return bare(words_on(printing)).find(bare(words)) != std::string::npos;
}

/// The charts of a plan's sheets.
std::vector<std::shared_ptr<const wording::TimeChart>> charts(const service::Printing& printing) {
    std::vector<std::shared_ptr<const wording::TimeChart>> all;
    for (const auto& sheet : printing.job.lists) {
        if (sheet.chart) {
            all.push_back(sheet.chart);
        }
    }
    return all;
}

/// The stew with another date on its label.
std::string stew_until(const std::string& date) {
    auto dated = stew;
    dated.replace(dated.find("use_by = ") + 9, date.size(), date);
    return dated;
}

/// A dish with much to add at one moment; as a rule with more than a small sheet has room for.
std::string crowded(int additions = 30) {
    std::string day = stew;
    for (int i = 0; i < additions; ++i) {
        day += "[[package.finish]]\nadd = \"" + std::to_string(i + 1) +
               " spoonfuls of the thick green herb paste that stands in the cool cellar\"\n"
               "when = \"at the start\"\n";
    }
    return day;
}

} // namespace

TEST_CASE("every event of a plan stands on its sheet with its time, and so does every remark") {
    for (const auto before : {120h, 4h}) { // in time, and too late to thaw as planned
        CAPTURE(before.count());
        const auto plan = plan_of(stew + gratin, before);
        const auto printing = sheets(plan);
        REQUIRE(printing);
        const auto style = style_of(settings());
        for (const auto& event : plan.line.events) {
            const auto said =
                say_event(plan.line, plan.dishes, event, style, wording::DishNamed::ByLane);
            CAPTURE(said.summary);
            const auto clock = say_time_of_day(on_clock(plan.line.clock, event.at), style.language);
            CHECK(says(*printing.value, clock + " " + said.summary));
            CHECK(says(*printing.value, said.description));
        }
        for (const auto& remark : plan.line.remarks) {
            const auto said = say_remark(plan.line, plan.dishes, remark, style);
            CAPTURE(said);
            CHECK(says(*printing.value, said));
        }
        CHECK(says(*printing.value, "Local food-safety rules come first."));
    }
}

TEST_CASE("a lane begins with the date on the label, and past a use-by there is nothing to do") {
    const auto fresh = sheets(plan_of(stew_until("2026-12-03"), 120h));
    REQUIRE(fresh);
    CHECK(says(*fresh.value, "Use by 3 Dec 2026"));
    CHECK_FALSE(says(*fresh.value, "before this meal"));
    CHECK_FALSE(sheets(plan_of(stew_until("2026-12-02"), 120h)));
    const auto beside = sheets(plan_of(stew_until("2026-12-02") + gratin, 120h));
    REQUIRE(beside);
    CHECK(
        says(*beside.value, "before this meal: use by 2 Dec 2026. Do not eat it after that day."));
    CHECK_FALSE(says(*beside.value, "Move Barley stew"));
}

TEST_CASE("of a window that begins on another day both ends have their day") {
    const auto plan = plan_of(stew, 120h);
    const auto& window = plan.line.dishes.front().thaw;
    REQUIRE(window);
    const auto style = style_of(settings());
    const auto clock = [&](kitchen::Instant at) {
        return say_clock(on_clock(plan.line.clock, at), style.language);
    };
    const auto printing = sheets(plan);
    REQUIRE(printing);
    CHECK(says(*printing.value, "No earlier than " + clock(window->no_earlier) +
                                    ", no later than " + clock(window->no_later)));
}

TEST_CASE("a chart has a moment for each event, at its minute") {
    const auto plan = plan_of(stew + gratin, 120h);
    const auto printing = sheets(plan);
    REQUIRE(printing);
    std::vector<std::chrono::minutes> drawn;
    std::optional<kitchen::Instant> zero;
    for (const auto& chart : charts(*printing.value)) {
        zero = plan.line.eat - chart->stretches.back().to;
        for (const auto& lane : chart->lanes) {
            for (const auto& moment : lane.moments) {
                drawn.push_back((*zero + moment.at).time_since_epoch());
                CHECK(moment.words.front().marker == wording::Marker::TickBox);
            }
        }
    }
    std::vector<std::chrono::minutes> planned;
    for (const auto& event : plan.line.events) {
        planned.push_back(event.at.time_since_epoch());
    }
    std::ranges::sort(drawn);
    CHECK(drawn == planned);
}

TEST_CASE("of several dishes a list has every event once, in order, below its day") {
    auto past = stew_until("2026-12-02");
    past.replace(past.find("Barley"), 6, "Medlar");
    const auto plan = plan_of(stew + gratin + past, 120h);
    const auto style = style_of(settings());
    const auto list = wording::plan_in_order(plan.line, plan.dishes, style);
    std::string expected;
    std::string day;
    for (const auto& event : plan.line.events) {
        const auto at = on_clock(plan.line.clock, event.at);
        if (const auto its_day = say_weekday_date(at, style.language); its_day != day) {
            expected += day = its_day;
        }
        const auto said =
            say_event(plan.line, plan.dishes, event, style, wording::DishNamed::InList);
        expected += say_time_of_day(at, style.language) + said.summary + said.description;
    }
    std::string found;
    for (const auto& row : list.field("in-order")->paragraphs) {
        for (const auto& span : row.spans) {
            found += span.text;
        }
        for (const auto& cell : row.cells) {
            found += cell.spans.front().text;
            for (const auto& below : cell.below) {
                found += below.spans.front().text;
            }
        }
        CHECK((row.cells.empty() || row.cells.front().marker == wording::Marker::TickBox));
    }
    const auto in_a_row = bare(found);
    CHECK(in_a_row.ends_with(bare(expected)));
    // Before it stands what is said of a dish before all: that of one the date is past.
    CHECK(in_a_row.substr(0, in_a_row.size() - bare(expected).size()).find("isbeforethismeal") !=
          std::string::npos);

    const auto both = sheets(plan);
    REQUIRE(both);
    CHECK(both.value->job.lists.size() == 2);
    CHECK(says(*both.value, "Dinner plan, in order"));
    const auto alone = sheets(plan_of(stew, 120h));
    REQUIRE(alone);
    CHECK(alone.value->job.lists.size() == 1); // its lane is in order
    const auto pictures = plan_pictures(plan, 2, settings(), world("216 mm", "279 mm"));
    REQUIRE(pictures);
    CHECK(charts(*pictures.value).size() == pictures.value->job.lists.size());
}

TEST_CASE("dishes that are too many for a sheet stand on further ones, evenly") {
    std::string many;
    for (int i = 0; i < 7; ++i) {
        auto another = stew;
        many +=
            another.replace(another.find("Barley"), 6, std::string(1, static_cast<char>('A' + i)));
    }
    const auto wide = sheets(plan_of(stew + gratin, 120h));
    REQUIRE(wide);
    CHECK(wide.value->laid_out.fitting.sheets == 2); // what is to be done in order, and the lanes
    const auto narrow = sheets(plan_of(stew + gratin, 120h), "105 mm", "148 mm");
    REQUIRE(narrow);
    CHECK(charts(*narrow.value).size() == 2);
    CHECK(says(*narrow.value, "Page 2 of 2"));
    const auto all = sheets(plan_of(many, 120h));
    REQUIRE(all);
    std::size_t lanes = 0;
    std::size_t most = 0;
    std::size_t least = 99;
    for (const auto& chart : charts(*all.value)) {
        const auto count = chart->lanes.size();
        lanes += count;
        most = std::max(most, count);
        least = std::min(least, count);
    }
    CHECK(lanes == 7);
    CHECK(most <= least + 1);
}

TEST_CASE("dishes that have no room side by side have a sheet each") {
    const auto printing = sheets(plan_of(crowded(26) + gratin, 120h));
    REQUIRE(printing);
    const auto all = charts(*printing.value);
    REQUIRE(all.size() == 2);
    CHECK(all[0]->lanes.size() == 1);
    CHECK(all[1]->lanes.size() == 1);
    for (const auto& print : printing.value->laid_out.fitting.prints) {
        CHECK(print.sizing.scales.back().value >= 1.0);
    }
}

TEST_CASE("a lane that no sheet can hold runs on, with all of its events once") {
    const auto plan = plan_of(crowded(), 120h);
    const auto printing = sheets(plan, "110 mm", "170 mm");
    CAPTURE(to_text(printing.messages));
    REQUIRE(printing);
    CHECK(printing.value->laid_out.fitting.sheets > 1);
    CHECK(says(*printing.value, "Barley stew, continued"));
    for (int i = 0; i < 30; ++i) {
        CHECK(says(*printing.value, "Add " + std::to_string(i + 1) + " spoonfuls"));
    }
}

TEST_CASE("what cannot be done at all is not drawn, and a page that is too small is refused") {
    const auto late = sheets(plan_of(gratin, 10min));
    CHECK_FALSE(late);
    CHECK(to_text(late.messages) == "error: this cannot be done, so no plan is drawn\n");
    const auto small = sheets(plan_of(crowded(), 120h), "51 mm", "101 mm");
    CHECK_FALSE(small);
    CHECK(to_text(small.messages).find("does not fit page") != std::string::npos);
}

TEST_CASE("lanes are shared out among sheets, and their events among pieces") {
    std::vector<kitchen::Lane> lanes(5);
    for (std::size_t i = 0; i < lanes.size(); ++i) {
        lanes[i].dish = i;
        lanes[i].events.resize(i);
    }
    const auto parts = service::plan_parts(lanes, {2, 1});
    REQUIRE(parts.size() == 3);
    CHECK(parts[0].lanes.size() == 2);
    CHECK(parts[2].lanes.size() == 1);
    CHECK(parts[2].number == 3);
    CHECK(parts[2].of == 3);
    std::size_t events = 0;
    for (const auto& part : service::plan_parts(lanes, {2, 3})) {
        CHECK_FALSE(part.lanes.empty());
        for (const auto& lane : part.lanes) {
            events += lane.events.size();
        }
    }
    CHECK(events == 0 + 1 + 2 + 3 + 4);
}
