#include "kitchen/texts/negation.h"

#include "base/list.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

using MentionSpan = std::span<const Mention>;

std::size_t end_of_mention(const Mention& mention) {
    return mention.first + mention.count;
}

/// Whether every word of `clause` stands in a negation.
bool is_bare(const std::vector<int>& clauses, int clause, MentionSpan negations) {
    for (std::size_t i = 0; i < clauses.size(); ++i) {
        const auto covers = [&](const Mention& mention) {
            return mention.meaning == "not" && mention.first <= i && i < end_of_mention(mention);
        };
        if (clauses[i] == clause && std::ranges::none_of(negations, covers)) {
            return false;
        }
    }
    return true;
}

bool stands_between(MentionSpan list, std::size_t after, std::size_t before) {
    return std::ranges::any_of(list, [&](const Mention& mention) {
        return mention.first >= after && mention.first < before;
    });
}

/// The words of a clause that begin at `first` and end before the result.
std::size_t end_of_clause(const std::vector<int>& clauses, std::size_t first) {
    std::size_t end = first;
    while (end < clauses.size() && clauses[end] == clauses[first]) {
        ++end;
    }
    return end;
}

bool negates(const WordedText& text, const Mention& negation, const Mention& mention,
             MentionSpan rivals) {
    const auto clauses = clauses_of(text);
    if (clauses[negation.first] != clauses[mention.first]) {
        return false;
    }
    if (negation.meaning == "not" && negation.first < mention.first) {
        return !stands_between(rivals, end_of_mention(negation), mention.first);
    }
    return negation.meaning == "after" && negation.first >= end_of_mention(mention) &&
           !stands_between(rivals, end_of_mention(mention), end_of_clause(clauses, mention.first));
}

/// Whether the mention only goes on with the list of the clause before: "…, the table or the sink".
bool goes_on(const WordedText& text, const Mention& before, const Mention& mention) {
    constexpr std::size_t most_words = 6;
    const auto clauses = clauses_of(text);
    const auto first = static_cast<std::size_t>(std::ranges::find(clauses, clauses[mention.first]) -
                                                clauses.begin());
    const auto end = end_of_clause(clauses, first);
    const auto thawing = mentions(text, Section::Thawing);
    return clauses[mention.first] - clauses[before.first] <= 1 && end - first <= most_words &&
           !stands_between(thawing, first, end);
}

bool is_filler(MentionSpan negations, std::size_t word) {
    return std::ranges::any_of(negations, [&](const Mention& mention) {
        return mention.meaning == "filler" && mention.first <= word &&
               word < end_of_mention(mention);
    });
}

bool is_joined_by_or(MentionSpan negations, std::size_t word) {
    return std::ranges::any_of(negations, [&](const Mention& mention) {
        return mention.meaning == "or" && mention.first == word;
    });
}

bool has(MentionSpan negations, std::string_view meaning, std::size_t first, std::size_t end) {
    return std::ranges::any_of(negations, [&](const Mention& mention) {
        return mention.meaning == meaning && mention.first < end && end_of_mention(mention) > first;
    });
}

} // namespace

std::vector<int> clauses_of(const WordedText& text) {
    const auto negations = mentions(text, Section::Negation);
    auto clauses = text.clauses;
    for (const auto& mention : negations) {
        if (mention.meaning == "clause" && mention.first > 0) {
            for (auto i = mention.first; i < clauses.size(); ++i) {
                ++clauses[i];
            }
        }
    }
    for (std::size_t i = 1; i < clauses.size(); ++i) {
        const int before = clauses[i - 1];
        const int here = clauses[i];
        if (here != before && is_bare(clauses, before, negations)) {
            std::ranges::replace(clauses, before, here);
        }
    }
    return clauses;
}

bool is_warned_of(const WordedText& text, MentionSpan all, std::size_t which, MentionSpan rivals) {
    const auto& mention = all[which];
    const auto negations = mentions(text, Section::Negation);
    if (std::ranges::any_of(negations, [&](const Mention& negation) {
            return negates(text, negation, mention, rivals);
        })) {
        return true;
    }
    return which > 0 && goes_on(text, all[which - 1], mention) &&
           !stands_between(rivals, all[which - 1].first, mention.first) &&
           is_warned_of(text, all, which - 1, rivals);
}

bool is_meant(const WordedText& text, MentionSpan all) {
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (!is_warned_of(text, all, i, {})) {
            return true;
        }
    }
    return false;
}

bool is_certain(const WordedText& text, const Mention& mention) {
    const auto clauses = clauses_of(text);
    return std::ranges::none_of(mentions(text, Section::Negation), [&](const Mention& negation) {
        return is_one_of(negation.meaning, {"not", "none", "needless", "after", "doubt", "free"}) &&
               clauses[negation.first] == clauses[mention.first];
    });
}

std::size_t first_filler_before(const WordedText& text, const Mention& mention) {
    const auto negations = mentions(text, Section::Negation);
    auto before = mention.first;
    while (before > 0 && is_filler(negations, before - 1)) {
        --before;
    }
    return before;
}

bool is_denied(const WordedText& text, MentionSpan all, std::size_t which) {
    const auto negations = mentions(text, Section::Negation);
    const auto& mention = all[which];
    if (has(negations, "free", mention.first, end_of_mention(mention) + 1)) {
        return true;
    }
    const auto before = first_filler_before(text, mention);
    if (before > 0 && has(negations, "not", before - 1, before)) {
        return true;
    }
    return before > 0 && which > 0 && is_joined_by_or(negations, before - 1) &&
           end_of_mention(all[which - 1]) + 1 == before && is_denied(text, all, which - 1);
}

bool is_named(const WordedText& text, MentionSpan all) {
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (!is_denied(text, all, i)) {
            return true;
        }
    }
    return false;
}

} // namespace thawslip::kitchen
