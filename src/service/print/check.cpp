#include "service/print/check.h"

#include "code/grade.h"
#include "code/picture.h"
#include "service/record/settle.h"

namespace thawslip::service {
namespace {

/// Lays out one print of each dish, for its bags are alike; what there is to say is added where it
/// is new.
std::optional<LaidOut> try_out(What what, const Days& days, const Look& look,
                               const Settings& settings, const Surroundings& around,
                               Messages& messages) {
    auto job = job_of(what, days, settings);
    job.which = layout::Which::FirstOfDish;
    auto outcome = lay_out(job, days, look, settings, around);
    messages.add_new(outcome.messages);
    return std::move(outcome.value);
}

} // namespace

Outcome<Checked> check(const DayTexts& texts, const Look& look, const Settings& settings,
                       const Surroundings& around) {
    Outcome<Checked> outcome;
    const auto planned = plan_days(texts, settings, Ids::Planned);
    auto days = settle(planned, around.ids, settings);
    outcome.messages = std::move(days.messages);
    if (!days) {
        return outcome;
    }
    Messages messages; // what was said of the days may be said again of their prints
    auto labels = try_out(What::Labels, *days.value, look, settings, around, messages);
    Look usual; // stock and layout are the labels'
    usual.dots_per_inch = look.dots_per_inch;
    usual.large_print = look.large_print;
    for (const auto what : {What::Cards, What::Lists}) {
        try_out(what, *days.value, usual, settings, around, messages);
    }
    outcome.messages.add(messages);
    outcome.value = Checked{std::move(*days.value), std::move(labels)};
    return outcome;
}

std::optional<char> best_grade(const code::SizedSymbol& code, double paper_reflectance) {
    constexpr int pixels_per_module = 6; // fewer are too few to grade
    code::Reflectance reflectance;
    reflectance.paper = paper_reflectance;
    const auto quality =
        code::grade(code::picture_of(code.symbol, pixels_per_module), code.symbol, reflectance);
    return quality ? std::optional{letter(quality->overall())} : std::nullopt;
}

} // namespace thawslip::service
