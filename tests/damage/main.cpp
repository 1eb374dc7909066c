// The damage laboratory: which share of labels can still be read after a winter, by winter,
// error-correction level and module size.
//
//   thawslip_damage [LABELS] [ROOM-MM] [DPI] [CHARACTERS]
//
// LABELS are harmed at each level (100 when not said). For each error-correction level the code is
// printed as large as ROOM-MM allows, in whole dots; the code that choose_symbol picks is marked.
// Each cell shows the share that ZXing-C++ reads and, after the stroke, that it or zbar reads.
#include "code/capacity.h"
#include "code/draw.h"
#include "code/symbol.h"
#include "damage/winters.h"

#include <cstdio>
#include <cstdlib>
#include <fmt/format.h>
#include <optional>

using namespace thawslip;
using namespace thawslip::damage;

namespace {

struct Plan {
    int labels = 100;
    double room_mm = 36.0;
    double dots_per_inch = 300.0;
    std::size_t characters = 200;
};

std::string instructions(std::size_t characters) {
    constexpr std::string_view label =
        "SQUASH AND RED LENTIL STEW\nSERVES 6 * BAG 7K2M-9 * MADE 17 OCT 2026 * BEST BY 17 JAN "
        "2027\nTHAW IN REFRIGERATOR\nAT START ADD 1 L VEGETABLE STOCK\nLAST 10 MIN ADD 200 G BABY "
        "SPINACH\nCOOK IN SLOW COOKER * AT LOW * FOR 7-9 H * TO 74 C\nSTEPS TIP THE THAWED BAG "
        "INTO THE COOKER * STIR IN THE STOCK * KEEP THE LID ON UNTIL THE LENTILS ARE SOFT\n"
        "CONTAINS CELERY * SULPHITES\nNOTE TASTE BEFORE SALTING - THE STOCK BRINGS SOME\nEND 1JQD";
    return std::string{label.substr(0, characters)};
}

/// The smallest version at this level, as large as the room allows in whole dots.
std::optional<Printed> largest(const std::string& text, code::Level level, const Plan& plan) {
    const int room = static_cast<int>(plan.room_mm / 25.4 * plan.dots_per_inch);
    for (int version = 1; version <= 40; ++version) {
        const code::Segments cut = code::segment(text, code::group_of(version));
        const int data_bits = 8 * code::blocks_of(version, level).data_codewords();
        if (cut.bits > static_cast<std::size_t>(data_bits)) {
            continue;
        }
        const int dots = room / (code::side_of(version) + 2 * code::quiet_zone_modules);
        if (dots == 0) {
            return std::nullopt;
        }
        return Printed{code::draw(cut.segments, version, level), text,
                       dots * 25.4 / plan.dots_per_inch, plan.dots_per_inch};
    }
    return std::nullopt;
}

void report(const Printed& code, bool chosen, int labels) {
    fmt::print("{} {} {:>2}  {:.3f} mm ", chosen ? '>' : ' ',
               "LMQH"[static_cast<int>(code.symbol.level)], code.symbol.version, code.module_mm);
    for (const auto& [winter, name] : winters) {
        int zxing = 0;
        int either = 0;
        for (int i = 0; i < labels; ++i) {
            const Readers readers = read_after(code, winter, static_cast<std::uint64_t>(i));
            zxing += readers.zxing ? 1 : 0;
            either += readers.either() ? 1 : 0;
        }
        fmt::print("  {:5.1f}/{:5.1f}", 100.0 * zxing / labels, 100.0 * either / labels);
        std::fflush(stdout);
    }
    fmt::print("\n");
}

Plan plan_from(int count, char** words) {
    Plan plan;
    plan.labels = count > 1 ? std::atoi(words[1]) : plan.labels;
    plan.room_mm = count > 2 ? std::atof(words[2]) : plan.room_mm;
    plan.dots_per_inch = count > 3 ? std::atof(words[3]) : plan.dots_per_inch;
    plan.characters = count > 4 ? static_cast<std::size_t>(std::atoi(words[4])) : plan.characters;
    return plan;
}

} // namespace

int main(int count, char** words) {
    const Plan plan = plan_from(count, words);
    const std::string text = instructions(plan.characters);
    const auto chosen = code::choose_symbol({text}, Length::millimetres(plan.room_mm),
                                            {plan.dots_per_inch}, Length::millimetres(0.4));
    fmt::print("{} characters, {} mm, {} dpi, {} labels a cell; ZXing/either\n  level, module  ",
               text.size(), plan.room_mm, plan.dots_per_inch, plan.labels);
    for (const auto& [winter, name] : winters) {
        fmt::print("  {:<11.11}", name);
    }
    fmt::print("\n");
    for (const auto level :
         {code::Level::Low, code::Level::Medium, code::Level::Quartile, code::Level::High}) {
        if (const auto code = largest(text, level, plan)) {
            report(*code, chosen && chosen.value().symbol.level == level, plan.labels);
        }
    }
}
