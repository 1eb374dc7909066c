#include "base/nearest.h"

#include "base/letters.h"

#include <algorithm>
#include <fmt/format.h>
#include <utility>
#include <vector>

namespace thawslip {
std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> before_last(b.size() + 1);
    std::vector<std::size_t> last(b.size() + 1);
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) {
        row[j] = j;
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        before_last.swap(last);
        last.swap(row);
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t replaced = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            row[j] = std::min({replaced, last[j] + 1, row[j - 1] + 1});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                row[j] = std::min(row[j], before_last[j - 2] + 1);
            }
        }
    }
    return row[b.size()];
}

std::optional<std::string> nearest(std::string_view word, std::span<const std::string> candidates) {
    constexpr std::size_t longest = 64; // longer words are no slips of the finger
    if (word.size() > longest) {
        return std::nullopt;
    }
    const auto wanted = lower(word);
    std::optional<std::string> best;
    std::size_t fewest = 4;
    for (const auto& candidate : candidates) {
        const auto distance = edit_distance(wanted, lower(candidate));
        const auto allowed = std::max<std::size_t>(std::max(word.size(), candidate.size()) / 3, 1);
        if (distance < fewest && distance <= allowed) {
            fewest = distance;
            best = candidate;
        }
    }
    return best;
}

std::string near_names(std::string_view word, std::span<const std::string> candidates) {
    if (const auto meant = nearest(word, candidates)) {
        return fmt::format("did you mean \"{}\"?", *meant);
    }
    constexpr std::size_t few = 6;
    if (candidates.size() <= few) {
        return "expected " + list_of(candidates);
    }
    const auto wanted = lower(word.substr(0, 64)); // longer words are no slips of the finger
    const auto rank = [&](const std::string& candidate) {
        const auto name = lower(candidate);
        const bool holds_word = !wanted.empty() && name.find(wanted) != std::string::npos;
        return std::pair{!holds_word, edit_distance(wanted, name)};
    };
    std::vector<std::string> near(candidates.begin(), candidates.end());
    std::ranges::stable_sort(near, {}, rank);
    near.resize(3);
    return fmt::format("did you mean {}?", list_of(near));
}

std::string list_of(std::span<const std::string> words) {
    std::string list;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) {
            list += i + 1 == words.size() ? " or " : ", ";
        }
        list += "\"" + words[i] + "\"";
    }
    return list;
}

} // namespace thawslip
