#include "app/commands.h"
#include "app/counted.h"
#include "app/day_files.h"
#include "app/door_list.h"
#include "app/json/answers.h"
#include "app/lay_out.h"
#include "app/make_prints.h"
#include "app/report.h"
#include "app/settle.h"
#include "app/tell_load.h"
#include "app/tell_minimum.h"
#include "code/grade.h"
#include "code/picture.h"
#include "kitchen/foods/food_reading.h"
#include "kitchen/heat/thaw_ceiling.h"
#include "wording/cooling.h"
#include "wording/fields.h"
#include "wording/phrases.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>
#include <set>
#include <sstream>

namespace thawslip::app {
namespace {

/// Says what several prints are told alike once. What is told begins at a line's beginning; lines
/// that belong to it are indented.
class SaidOnce {
public:
    explicit SaidOnce(std::ostream& out) : out_{out} {}

    void say(const std::string& text) {
        for (std::size_t at = 0; at < text.size();) {
            auto end = at;
            do {
                end = std::min(text.find('\n', end), text.size() - 1) + 1;
            } while (end < text.size() && text[end] == ' ');
            auto one = text.substr(at, end - at);
            if (said_.insert(one).second) {
                out_ << one;
            }
            at = end;
        }
    }

private:
    std::ostream& out_;
    std::set<std::string> said_;
};

/// "food: "Hackfleisch" is taken as "raw ground meat"": what the cook's own words were read as.
void tell_food(const kitchen::Package& package, std::ostream& out) {
    if (!package.food_as_written.empty() && package.food_as_written != package.food) {
        out << fmt::format("    food: {} is taken as {}\n", kitchen::said(package.food_as_written),
                           kitchen::said(package.food));
    } else if (package.food_basis == kitchen::FoodBasis::Words) {
        out << fmt::format("    food: not given; the words name {}\n", kitchen::said(package.food));
    }
}

/// "soup or stew keeps 2–3 months: Soups and stews, FoodSafety.gov…": where a date comes from.
void tell_why(const kitchen::KeepUntil& keep, std::ostream& out) {
    if (!keep.row) {
        out << "    date: set by hand in use_by\n";
        return;
    }
    const auto& row = *keep.row;
    out << fmt::format("    date: {} keeps {} at best quality; the low end is printed\n"
                       "          list \"{}\", row \"{}\" ({}; {})\n",
                       row.food, span_text(row), row.rule_set, row.row, row.source, row.status);
}

std::string_view words_for(kitchen::LeadBasis basis) {
    switch (basis) {
    case kitchen::LeadBasis::HeatTransfer: return "heat transfer through its thickness";
    case kitchen::LeadBasis::HeatBalance: return "the heat it takes up, over the oven's power";
    case kitchen::LeadBasis::AgencyRule: return "the agencies' rule for its weight (USDA FSIS)";
    case kitchen::LeadBasis::CommonPractice: return "common practice, no source";
    }
    return {};
}

std::string_view words_for(kitchen::MissingSize missing) {
    switch (missing) {
    case kitchen::MissingSize::None: return {};
    case kitchen::MissingSize::Thickness: return "; thickness is not given";
    case kitchen::MissingSize::Weight: return "; weight is not given";
    case kitchen::MissingSize::Both: return "; neither weight nor thickness is given";
    }
    return {};
}

std::string_view words_for(kitchen::Placing placing) {
    switch (placing) {
    case kitchen::Placing::Rack: return "on a rack, air on both faces";
    case kitchen::Placing::Tray: return "on a tray, one face does most of the work";
    case kitchen::Placing::Stacked: return "in a stack, the middle one of three";
    }
    return {};
}

std::string_view words_for(kitchen::Wetness wetness) {
    switch (wetness) {
    case kitchen::Wetness::Dish: return "75 % water";
    case kitchen::Wetness::Soup: return "a soup's 88 % water";
    case kitchen::Wetness::Either: return "75 to 88 % water";
    }
    return {};
}

std::string days_text(const kitchen::DaysLeft& left) {
    const auto unit = left.high.count() == 1 ? "day" : "days";
    return left.low == left.high
               ? fmt::format("{} {}", left.high.count(), unit)
               : fmt::format("{} to {} {}", left.low.count(), left.high.count(), unit);
}

/// "thaw: 24 h, by the agencies' rule…": what decided how long it has to thaw.
void tell_lead(const kitchen::PlannedPackage& planned, const Settings& settings,
               std::ostream& out) {
    const auto& language = language_of(settings);
    if (planned.package.thaw.method == kitchen::ThawMethod::FromFrozen) {
        out << "    thaw: cooked from frozen\n";
        return;
    }
    if (!planned.thaw_lead) {
        out << "    thaw: food does not thaw at the temperature set for it; the agencies' rule is "
               "printed\n";
        return;
    }
    const auto& lead = *planned.thaw_lead;
    const auto said = [&](std::chrono::minutes time) { return say_duration(time, language); };
    out << fmt::format("    thaw: {}, by {}{}\n", said(lead.lead), words_for(lead.decided_by),
                       words_for(lead.missing));
    out << fmt::format(
        "          {}{}\n", words_for(lead.wetness),
        lead.method == kitchen::ThawMethod::Refrigerator
            ? fmt::format(", {}; looked at from {}", words_for(lead.placing), said(lead.soonest))
            : "");
    if (lead.by_heat && lead.by_agency) {
        out << fmt::format("          heat transfer with its margin {}, the agencies' rule {}: "
                           "the longer one counts\n",
                           said(*lead.by_heat), said(*lead.by_agency));
    }
    const auto thaw = settings_for(planned.package, planned.wetness, settings.kitchen.thaw);
    if (const auto face = warm_face(lead, kitchen::Served::Cooked, thaw)) {
        out << fmt::format("          its outside is warmer than 5 °C for {}{}; {} at most\n",
                           said(face->warm),
                           lead.method == kitchen::ThawMethod::ColdWater
                               ? fmt::format(", {} of handling counted", said(kitchen::handling))
                               : "",
                           said(face->limit));
    }
    if (const auto& left = planned.after_thawing) {
        out << fmt::format("          once thawed, {}: \"{}\" ({})\n", days_text(*left),
                           left->row.row, left->row.source);
        if (const auto& fresh = left->capped_by) {
            out << fmt::format("          no longer than fresh, {} to {} days: \"{}\" ({})\n",
                               fresh->low.count(), fresh->high.count(), fresh->row, fresh->source);
        }
    }
}

void tell(const kitchen::PlannedPackage& planned, Why why, const Settings& settings,
          std::ostream& out) {
    const auto& language = language_of(settings);
    out << fmt::format("{}: {}, made {}, {} {}\n   ", planned.package.dish,
                       counted(planned.bags.size(), "bag"), say_date(planned.made, language),
                       say_keep_until_head(planned.keep_until, language),
                       say_date(planned.keep_until.date, language));
    for (const auto& bag : planned.bags) {
        out << " " << bag.id;
    }
    out << "\n";
    if (why == Why::Told) {
        tell_food(planned.package, out);
        tell_why(planned.keep_until, out);
        tell_minimum(planned, style_of(settings).units, out);
        tell_lead(planned, settings, out);
        if (planned.freezing) {
            out << fmt::format(
                "    freeze: {} lying so in the freezer, by heat transfer with its margin\n",
                say_duration(*planned.freezing, language));
        }
    }
    if (planned.cooling &&
        (why == Why::Told || planned.cooling->way != kitchen::CoolingWay::AsPlaced)) {
        out << "    cool: " << say_cooling(*planned.cooling, style_of(settings)) << "\n";
    }
    for (const auto& caution : planned.cautions) {
        out << "    caution: " << say_caution(caution, language) << "\n";
    }
}

/// The code, and the grade that a verifier could give it at best.
void tell_code(const code::SizedSymbol& code, double paper_reflectance, std::ostream& out) {
    constexpr std::string_view levels = "LMQH";
    constexpr int pixels_per_module = 6; // fewer are too few to grade
    out << fmt::format(
        "    code: version {}, level {}, modules of {:.2f} mm ({} dots), {} characters",
        code.symbol.version, levels[static_cast<std::size_t>(code.symbol.level)],
        code.module.in_millimetres(), code.dots_per_module, code.text.size());
    code::Reflectance reflectance;
    reflectance.paper = paper_reflectance;
    const auto quality =
        code::grade(code::picture_of(code.symbol, pixels_per_module), code.symbol, reflectance);
    if (quality) {
        out << fmt::format("; grade {} at best (ISO/IEC 15415)", letter(quality->overall()));
    }
    out << "\n";
}

/// What cards and lists refuse of days whose labels are well, each told once.
bool others_can_be_printed(const Days& days, const PrintOptions& options, const Settings& settings,
                           SaidOnce& said) {
    PrintOptions usual; // stock and layout are the labels'
    usual.days = options.days;
    usual.dots_per_inch = options.dots_per_inch;
    bool can = true;
    for (auto job :
         {card_job(days, CardKinds::Both, settings), list_job(days, ListKinds::Both, settings)}) {
        job.which = layout::Which::FirstOfDish;
        std::ostringstream err;
        const Console quiet{err, err};
        can = lay_out(job, days, usual, settings, quiet).ok() && can;
        said.say(err.str());
    }
    return can;
}

/// The sizes that the labels of one dish got; all its bags are alike.
void tell_fit(const layout::Fitted& fitted, const Setup& setup, double paper_reflectance,
              std::ostream& out) {
    std::string left_out;
    out << "    x-heights:";
    for (const auto& area : report(fitted, setup.chosen.at(fitted.kind))) {
        if (area.left_out) {
            left_out += " " + area.area;
        } else if (area.x_height > Length{}) {
            out << fmt::format(" {} {:.2f}", area.area, area.x_height.in_millimetres());
        }
    }
    out << " mm\n";
    if (!left_out.empty()) {
        out << "    left out:" << left_out << "\n";
    }
    if (fitted.symbol) {
        tell_code(*fitted.symbol, paper_reflectance, out);
    }
}

} // namespace

ExitStatus check(const PrintOptions& options, Why why, AnswerAs answer, const Settings& settings,
                 Console console) {
    const auto as_read = read_days(options.days, settings, Ids::Planned);
    const auto days =
        has_errors(as_read.diagnostics) ? as_read : settle_to_look(as_read, settings, console);
    print(console.err, days.diagnostics, days.documents);
    if (has_errors(days.diagnostics)) {
        return ExitStatus::Refused;
    }
    std::ostringstream of_labels;
    auto labels = label_job(days, settings);
    labels.which = layout::Which::FirstOfDish; // its bags are alike
    const auto laid_out = lay_out(labels, days, options, settings, {console.out, of_labels});
    SaidOnce said{console.err};
    said.say(of_labels.str());
    const bool others = others_can_be_printed(days, options, settings, said);
    const auto style = style_of(settings);
    const auto status = !laid_out ? laid_out.fault()
                        : others  ? ExitStatus::Done
                                  : ExitStatus::Refused;
    if (answer == AnswerAs::Json) {
        console.out << check_json(days, style) << "\n";
        return status;
    }
    std::size_t dish = 0;
    for (const auto& plan : days.plans) {
        for (const auto& planned : plan.packages) {
            tell(planned, why, settings, console.out);
            if (laid_out && why == Why::Told) {
                tell_fit(laid_out.value().fitting.prints[dish], laid_out.value().setup,
                         settings.paper_reflectance, console.out);
            }
            ++dish;
        }
        for (const auto& caution : plan.cautions) {
            console.out << "the day: " << say_caution(caution, style.language) << "\n";
        }
        if (plan.freezer_load) {
            tell_load(plan, style.units, console.out);
        }
    }
    for (const auto& trouble : shared_freezer_troubles(days.plans, style.units)) {
        console.out << "the freezer: " << trouble << "\n";
    }
    return status;
}

} // namespace thawslip::app
