#include "service/archive/archive_days.h"

#include "base/list.h"
#include "base/parallel.h"
#include "intake/storage_file.h"
#include "service/record/day_record.h"
#include "service/record/print_setup.h"
#include "unicode/ascii.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <fmt/format.h>
#include <map>
#include <memory>

namespace thawslip::service {
namespace {

using archive::PackageRecord;

/// Settings of a print, and the storage times that they name.
struct ReadBy {
    Settings settings;
    kitchen::StorageTable table;
};

/// Of many prints, each text of settings is read once.
class Readers {
public:
    /// \param setup nullptr: never printed \returns nullptr where a later Thawslip wrote them
    const ReadBy* of(const archive::PrintSetup* setup) {
        const auto [known, is_new] = known_.try_emplace(setup == nullptr ? "" : setup->settings);
        if (is_new) {
            known->second = read(setup);
        }
        return known->second.get();
    }

private:
    static std::unique_ptr<ReadBy> read(const archive::PrintSetup* setup) {
        auto with = setup != nullptr ? printed_with(*setup) : PrintedWith{};
        if (!with) {
            return nullptr;
        }
        auto settings = std::move(with).value().settings;
        auto table = intake::built_in_storage(settings.storage_list);
        return std::make_unique<ReadBy>(ReadBy{std::move(settings), std::move(table)});
    }

    std::map<std::string, std::unique_ptr<ReadBy>> known_;
};

/// A day as an archive keeps it, and how it was last printed, if ever.
struct Kept {
    archive::DayRecord record;
    bool was_printed = false;
    const ReadBy* by = nullptr;
};

/// The day read again; nothing where this program refuses it.
std::optional<archive::DayRecord> read_again(const Kept& kept) {
    if (kept.by == nullptr) {
        return std::nullopt;
    }
    const auto days =
        reread_day({kept.record.file, kept.record.description}, kept.by->settings, kept.by->table);
    return has_errors(days.diagnostics) || days.plans.empty() ? std::nullopt
                                                              : std::optional{record_of(days, 0)};
}

std::string listed(const std::vector<std::string>& entries) {
    return entries.empty() ? "none" : joined(entries, ", ");
}

template <class Value>
std::string say(const char* what, const Value& here, const Value& there) {
    return fmt::format("{} {} in the archive, {} in the description", what, here, there);
}

std::string in_quotes(const std::string& text) {
    return "\"" + text + "\"";
}

std::string weight_text(const std::optional<kitchen::Mass>& weight) {
    return weight ? fmt::format("{} g", weight->grams) : "nothing";
}

bool same_weight(const PackageRecord& kept, const PackageRecord& described) {
    constexpr double milligram = 0.001;
    return kept.weight.has_value() == described.weight.has_value() &&
           (!kept.weight || std::abs(kept.weight->grams - described.weight->grams) < milligram);
}

/// What differs of what only the description decides; empty where nothing does.
std::string difference_in_words(const PackageRecord& kept, const PackageRecord& described) {
    if (kept.dish != described.dish) {
        return say("is named", in_quotes(kept.dish), in_quotes(described.dish));
    }
    if (kept.made != described.made) {
        return say("was made", kitchen::to_iso(kept.made), kitchen::to_iso(described.made));
    }
    if (kept.servings != described.servings) {
        return say("serves", kept.servings, described.servings);
    }
    if (!same_weight(kept, described)) {
        return say("weighs", weight_text(kept.weight), weight_text(described.weight));
    }
    if (kept.bags.size() != described.bags.size()) {
        return say("has bags:", kept.bags.size(), described.bags.size());
    }
    if (kept.place != described.place) {
        return say("lies in", in_quotes(kept.place), in_quotes(described.place));
    }
    if (kept.food && described.food && kept.food->allergens != described.food->allergens) {
        return say("contains:", listed(kept.food->allergens), listed(described.food->allergens));
    }
    if (kept.thaw && described.thaw && kept.thaw->method != described.thaw->method) {
        return say("thaws:", archive::word_of(kept.thaw->method),
                   archive::word_of(described.thaw->method));
    }
    return {};
}

/// Whether the archive gives another date than the cook set, or a later one than a list gives.
bool keeps_otherwise(const PackageRecord& kept, const PackageRecord& described) {
    const bool by_lists = kept.basis == kitchen::DateBasis::StorageTable &&
                          described.basis == kitchen::DateBasis::StorageTable;
    return by_lists ? kept.keep_until > described.keep_until
                    : kept.basis != described.basis || kept.keep_until != described.keep_until;
}

bool thaws_too_soon(const PackageRecord& kept, const PackageRecord& described) {
    return kept.thaw && described.thaw && kept.thaw->lead && described.thaw->lead &&
           *kept.thaw->lead < *described.thaw->lead;
}

/// The same of what hangs on the settings, too.
std::string difference_by_settings(const PackageRecord& kept, const PackageRecord& described) {
    // A dish that was of no kind may have got one since from a program that knows more words.
    if (kept.food && described.food && !kept.food->classes.empty() &&
        kept.food->classes != described.food->classes) {
        return say("is of the kinds:", listed(kept.food->classes), listed(described.food->classes));
    }
    if (keeps_otherwise(kept, described)) {
        return say("keeps until", kitchen::to_iso(kept.keep_until),
                   kitchen::to_iso(described.keep_until));
    }
    if (thaws_too_soon(kept, described)) {
        return say("thaws in", fmt::format("{} min", kept.thaw->lead->count()),
                   fmt::format("{} min", described.thaw->lead->count()));
    }
    return {};
}

std::string difference(const Kept& kept, std::size_t package, const PackageRecord& described) {
    const auto& here = kept.record.packages[package];
    auto what = difference_in_words(here, described);
    return what.empty() && kept.was_printed ? difference_by_settings(here, described) : what;
}

std::string difference_of_day(const archive::DayRecord& kept, const archive::DayRecord& described) {
    if (kept.made != described.made) {
        return say("is of", kitchen::to_iso(kept.made), kitchen::to_iso(described.made));
    }
    return kept.kitchen == described.kitchen
               ? std::string{}
               : say("is of the kitchen", in_quotes(kept.kitchen), in_quotes(described.kitchen));
}

/// How a dish is searched for follows from its name alone.
void hold_words(const Kept& kept, std::vector<Differing>& differing) {
    for (std::size_t i = 0; i < kept.record.packages.size(); ++i) {
        auto right = kept.record.packages[i];
        right.words = unicode::fold_for_search(right.dish);
        if (right.words != kept.record.packages[i].words) {
            auto what =
                fmt::format("\"{}\" of {} {}", right.dish, kitchen::to_iso(kept.record.made),
                            say("is found by", in_quotes(kept.record.packages[i].words),
                                in_quotes(right.words)));
            differing.push_back(
                {{}, static_cast<int>(i + 1), {}, std::move(right), std::move(what)});
        }
    }
}

std::vector<Differing> held_against_description(const Kept& kept) {
    std::vector<Differing> differing;
    const auto described = read_again(kept);
    if (!described || described->packages.size() != kept.record.packages.size()) {
        hold_words(kept, differing);
        return differing;
    }
    const auto day = kitchen::to_iso(described->made);
    if (const auto what = difference_of_day(kept.record, *described); !what.empty()) {
        differing.push_back(
            {{}, 0, *described, {}, fmt::format("the description of {} {}", day, what)});
    }
    for (std::size_t i = 0; i < kept.record.packages.size(); ++i) {
        const auto& right = described->packages[i];
        if (const auto what = difference(kept, i, right); !what.empty()) {
            differing.push_back({{},
                                 static_cast<int>(i + 1),
                                 *described,
                                 right,
                                 fmt::format("\"{}\" of {} {}", right.dish, day, what)});
        }
    }
    if (differing.empty()) {
        hold_words(kept, differing);
    }
    return differing;
}

/// What differs of each day: days are held against their descriptions side by side, for that takes
/// nearly all of the time.
std::vector<std::vector<Differing>> differences(const std::vector<Kept>& days,
                                                const Progress& progress) {
    std::vector<std::vector<Differing>> differing(days.size());
    std::atomic<std::size_t> done = 0;
    in_parallel(days.size(), [&](std::size_t i) {
        differing[i] = held_against_description(days[i]);
        const auto so_far = ++done;
        if (progress) {
            progress(so_far, days.size());
        }
    });
    return differing;
}

} // namespace

std::vector<Differing> held_against_days(archive::Archive& archive, const Progress& progress) {
    Readers readers;
    std::vector<Kept> kept;
    const auto days = archive.days();
    for (const auto& day : days) {
        const auto prints = archive.prints_of(day.key);
        kept.push_back(
            {{day.made, day.kitchen, day.file, day.description, archive.packages(day.key)},
             !prints.empty(),
             readers.of(prints.empty() ? nullptr : &prints.front().setup)});
    }
    std::vector<Differing> all;
    auto differing = differences(kept, progress);
    for (std::size_t i = 0; i < differing.size(); ++i) {
        for (auto& one : differing[i]) {
            one.day = days[i].key;
            all.push_back(std::move(one));
        }
    }
    return all;
}

std::vector<std::string> held_against_days(const archive::Contents& contents,
                                           const Progress& progress) {
    std::map<std::size_t, const archive::PrintSetup*> printed;
    for (const auto& print : contents.prints) {
        for (const auto day : print.days) {
            printed[day] = &print.setup; // the last one
        }
    }
    Readers readers;
    std::vector<Kept> kept;
    for (std::size_t i = 0; i < contents.days.size(); ++i) {
        const auto print = printed.find(i);
        const bool was_printed = print != printed.end();
        kept.push_back({contents.days[i].record, was_printed,
                        readers.of(was_printed ? print->second : nullptr)});
    }
    std::vector<std::string> wrong;
    for (auto& differing : differences(kept, progress)) {
        for (auto& one : differing) {
            wrong.push_back(std::move(one.what));
        }
    }
    return wrong;
}

std::vector<std::string> rebuild_from_days(archive::Archive& archive) {
    std::vector<std::string> put_right;
    for (const auto& one : held_against_days(archive)) {
        if (one.position == 0) {
            archive.put_right(one.day, one.described.made, one.described.kitchen);
        } else {
            archive.put_right(one.day, one.position, one.put_right);
        }
        put_right.push_back(one.what);
    }
    return put_right;
}

} // namespace thawslip::service
