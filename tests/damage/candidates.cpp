#include "damage/candidates.h"

#include "code/capacity.h"
#include "code/draw.h"
#include "code/symbol.h"

#include <algorithm>
#include <optional>
#include <string_view>

namespace thawslip::damage {
namespace {

constexpr double slack = 1e-6; // a room of whole dots counts as that many

std::optional<Printed> largest(const std::string& text, code::Level level,
                               const Situation& situation) {
    const double room = situation.room_mm / 25.4 * situation.dots_per_inch;
    for (int version = 1; version <= 40; ++version) {
        const code::Segments cut = code::segment(text, code::group_of(version));
        const int data_bits = 8 * code::blocks_of(version, level).data_codewords();
        if (cut.bits > static_cast<std::size_t>(data_bits)) {
            continue;
        }
        const int modules = code::side_of(version) + 2 * code::quiet_zone_modules;
        const int dots = static_cast<int>(room + slack) / modules;
        return Printed{code::draw(cut.segments, version, level), text,
                       dots * 25.4 / situation.dots_per_inch, situation.dots_per_inch};
    }
    return std::nullopt;
}

} // namespace

std::string instructions(std::size_t characters) {
    constexpr std::string_view label =
        "SQUASH AND RED LENTIL STEW\n"
        "SERVES 6 * BAG K7Q-2M4-9XC * MADE 17 OCT 2026 * BEST BY 17 JAN 2027\n"
        "THAW IN REFRIGERATOR\n"
        "AT START ADD 1 L VEGETABLE STOCK\n"
        "LAST 10 MIN ADD 200 G BABY SPINACH\n"
        "COOK IN SLOW COOKER * AT LOW * FOR 7-9 H * TO 74 C\n"
        "STEPS TIP THE THAWED BAG INTO THE COOKER * STIR IN THE STOCK * KEEP THE LID ON UNTIL THE "
        "LENTILS ARE SOFT\n"
        "CONTAINS CELERY * SULPHITES\n"
        "NOTE TASTE BEFORE SALTING - THE STOCK BRINGS SOME\n"
        "END 1JQD";
    return std::string{label.substr(0, characters)};
}

std::vector<Printed> candidates(const Situation& situation, double least_mm) {
    std::vector<Printed> codes;
    for (const auto level :
         {code::Level::Low, code::Level::Medium, code::Level::Quartile, code::Level::High}) {
        auto code = largest(instructions(situation.characters), level, situation);
        if (code && code->module_mm >= least_mm - slack) {
            codes.push_back(std::move(*code));
        }
    }
    return codes;
}

std::size_t chosen(const std::vector<Printed>& codes, const Situation& situation, double least_mm) {
    const auto choice = code::choose_symbol(
        {instructions(situation.characters)}, Length::millimetres(situation.room_mm),
        {situation.dots_per_inch}, Length::millimetres(least_mm));
    const auto found = std::ranges::find_if(codes, [&](const Printed& code) {
        return choice && choice.value().symbol.level == code.symbol.level;
    });
    return static_cast<std::size_t>(found - codes.begin());
}

} // namespace thawslip::damage
