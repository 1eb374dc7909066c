// The damage laboratory: which share of labels can still be read after a winter.
//
//   thawslip_damage_lab [LABELS] [CHARACTERS] [ROOM-MM] [DPI] [FIRST-SEED]
//     By winter, error-correction level and module size: for each level the smallest version, as
//     large as the room allows in whole dots. `>` marks what choose_symbol picks. Each cell is the
//     share that `thawslip read` reads and, after the stroke, that it or zbar reads. Other labels
//     than last time have another first seed.
//
//   thawslip_damage_lab aims [LABELS] [CHARACTERS] [ROOM-MM] [DPI] [FIRST-SEED]
//     The code that choose_symbol picks, alone, in the winters that the aims are set for.
//
//   thawslip_damage_lab rules [LABELS]
//     Which rule picks best, over several rooms, printers and lengths of text, modules of 0.33 mm
//     and more: choose_symbol, the highest level that fits, or the largest module that fits. Each
//     cell is the share that ZXing-C++ reads: the mean over frost and a scuff, with and without a
//     tenth of the code smeared, seen by a good and by a poor camera.
//
//   thawslip_damage_lab photos [PHOTOGRAPHS] [CHARACTERS]
//     Which share of hard photographs of fresh labels is read, by what makes them hard and by
//     camera; ZXing-C++ behind read_picture / zbar.
#include "base/list.h"
#include "damage/candidates.h"
#include "damage/hard_photo.h"
#include "damage/readers.h"
#include "damage/winters.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <fmt/format.h>
#include <string_view>

using namespace thawslip;
using namespace thawslip::damage;

namespace {

constexpr double least_mm = 0.4;        ///< what labels allow
constexpr double least_asked_mm = 0.33; ///< what they allow when a setting asks for it

/// Shares in per cent.
struct Shares {
    double zxing = 0.0;
    double either = 0.0;
};

Shares shares_read(const Printed& code, const Trial& trial, int labels, int first_seed = 0) {
    Shares shares;
    for (int i = 0; i < labels; ++i) {
        const Readers readers = read_after(code, trial, static_cast<std::uint64_t>(first_seed + i));
        shares.zxing += readers.zxing ? 100.0 / labels : 0.0;
        shares.either += readers.either() ? 100.0 / labels : 0.0;
    }
    return shares;
}

std::string name_of(const Printed& code) {
    return fmt::format("{} {:>2} {:.3f} mm", "LMQH"[static_cast<int>(code.symbol.level)],
                       code.symbol.version, code.module_mm);
}

void print_share(const Printed& code, Winter winter, int labels, int first_seed) {
    const Shares shares = shares_read(code, {winter, Camera::Good, Ask::Both}, labels, first_seed);
    fmt::print("  {:5.1f}/{:5.1f}", shares.zxing, shares.either);
    std::fflush(stdout);
}

void print_table(const Situation& situation, int labels, int first_seed) {
    fmt::print("{} characters, {} mm, {} dpi, {} labels a cell; ZXing/either\n{:<16}",
               situation.characters, situation.room_mm, situation.dots_per_inch, labels,
               "level, module");
    for (const auto& [winter, name] : winters) {
        fmt::print("  {:<11.11}", name);
    }
    const std::vector<Printed> codes = candidates(situation, least_asked_mm);
    const std::size_t choice = chosen(codes, situation, least_mm);
    for (std::size_t i = 0; i < codes.size(); ++i) {
        fmt::print("\n{} {}", i == choice ? '>' : ' ', name_of(codes[i]));
        for (const auto& [winter, name] : winters) {
            print_share(codes[i], winter, labels, first_seed);
        }
    }
    fmt::print("\n");
}

void print_aims(const Situation& situation, int labels, int first_seed) {
    const std::vector<Printed> codes = candidates(situation, least_asked_mm);
    const Printed& code = codes[chosen(codes, situation, least_mm)];
    fmt::print("{}, {} characters, {} labels; ZXing/either\n", name_of(code), situation.characters,
               labels);
    for (const auto& [winter, name] : winters) {
        if (is_one_of(winter, {Winter::FrostScuff, Winter::TenthSmeared, Winter::WetCorner})) {
            fmt::print("{:<40}", name);
            print_share(code, winter, labels, first_seed);
            fmt::print("\n");
        }
    }
}

constexpr std::array<Situation, 6> situations = {{
    {200, 36.0, 300.0},
    {330, 36.0, 300.0},
    {200, 30.0, 300.0},
    {330, 40.0, 600.0},
    {200, 36.0, 203.2},
    {120, 25.0, 300.0},
}};

double mean_share(const Printed& code, int labels) {
    constexpr std::array<Trial, 4> trials = {{
        {Winter::FrostScuff, Camera::Good, Ask::ZXingOnly},
        {Winter::FrostScuff, Camera::Poor, Ask::ZXingOnly},
        {Winter::TenthSmeared, Camera::Good, Ask::ZXingOnly},
        {Winter::TenthSmeared, Camera::Poor, Ask::ZXingOnly},
    }};
    double sum = 0.0;
    for (const Trial& trial : trials) {
        sum += shares_read(code, trial, labels).zxing;
    }
    return sum / trials.size();
}

/// The candidate with the largest modules, of equals the higher level.
std::size_t largest_module(const std::vector<Printed>& codes) {
    std::size_t best = 0;
    for (std::size_t i = 1; i < codes.size(); ++i) {
        best = codes[i].module_mm >= codes[best].module_mm ? i : best;
    }
    return best;
}

void print_rules(int labels) {
    fmt::print(
        "characters, room, printer    each candidate; < our rule, H highest level, M largest "
        "module\n");
    std::array<double, 4> sums{};
    for (const Situation& situation : situations) {
        const std::vector<Printed> codes = candidates(situation, least_asked_mm);
        const std::array picks = {chosen(codes, situation, least_asked_mm), codes.size() - 1,
                                  largest_module(codes)};
        fmt::print("{:>3}, {} mm, {:>5} dpi ", situation.characters, situation.room_mm,
                   situation.dots_per_inch);
        std::vector<double> shares;
        for (std::size_t i = 0; i < codes.size(); ++i) {
            shares.push_back(mean_share(codes[i], labels));
            fmt::print("  {} {:5.1f}{}{}{}", name_of(codes[i]), shares[i], i == picks[0] ? "<" : "",
                       i == picks[1] ? "H" : "", i == picks[2] ? "M" : "");
            std::fflush(stdout);
        }
        for (std::size_t rule = 0; rule < picks.size(); ++rule) {
            sums[rule] += shares[picks[rule]] / situations.size();
        }
        sums[3] += *std::ranges::max_element(shares) / situations.size();
        fmt::print("\n");
    }
    fmt::print("mean: our rule {:.1f}, highest level {:.1f}, largest module {:.1f}, best of all "
               "{:.1f}\n",
               sums[0], sums[1], sums[2], sums[3]);
}

void print_photos(int photographs, std::size_t characters) {
    const Situation situation{characters, 36.0, 300.0};
    const auto codes = candidates(situation, least_mm);
    const auto& code = codes.at(chosen(codes, situation, least_mm));
    fmt::print(
        "{}, {} characters, {} photographs a cell; read_picture/zbar, good and poor camera\n",
        name_of(code), characters, photographs);
    for (const auto& [hardship, name] : hardships) {
        fmt::print("{:<20}", name);
        for (const auto camera : {Camera::Good, Camera::Poor}) {
            Shares shares;
            for (int i = 0; i < photographs; ++i) {
                const auto picture =
                    hard_photo(code, hardship, camera, static_cast<std::uint64_t>(i));
                shares.zxing += zxing_reads(picture, code.text) ? 100.0 / photographs : 0.0;
                shares.either += zbar_reads(picture, code.text) ? 100.0 / photographs : 0.0;
            }
            fmt::print("  {:5.1f}/{:5.1f}", shares.zxing, shares.either);
            std::fflush(stdout);
        }
        fmt::print("\n");
    }
}

} // namespace

int main(int count, char** words) {
    if (count > 1 && std::string_view{words[1]} == "rules") {
        print_rules(count > 2 ? std::atoi(words[2]) : 50);
        return 0;
    }
    if (count > 1 && std::string_view{words[1]} == "photos") {
        print_photos(count > 2 ? std::atoi(words[2]) : 50,
                     count > 3 ? static_cast<std::size_t>(std::atoi(words[3])) : 200);
        return 0;
    }
    const bool aims = count > 1 && std::string_view{words[1]} == "aims";
    if (aims) {
        --count;
        ++words;
    }
    const int labels = count > 1 ? std::atoi(words[1]) : 100;
    Situation situation;
    situation.characters = count > 2 ? static_cast<std::size_t>(std::atoi(words[2])) : 200;
    situation.room_mm = count > 3 ? std::atof(words[3]) : situation.room_mm;
    situation.dots_per_inch = count > 4 ? std::atof(words[4]) : situation.dots_per_inch;
    (aims ? print_aims : print_table)(situation, labels, count > 5 ? std::atoi(words[5]) : 0);
}
