#include "kitchen/texts/lexicon.h"

#include "base/list.h"
#include "kitchen/texts/phrases.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <functional>
#include <optional>
#include <unordered_map>
#include <utility>

namespace thawslip::kitchen {
namespace {

struct BookEntry {
    std::vector<std::string> words;
    Tongue tongue = Tongue::English;
    const LexiconRow* row = nullptr;
};

struct TextHash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const {
        return std::hash<std::string_view>{}(text);
    }
};

using Index = std::unordered_map<std::string, std::vector<BookEntry>, TextHash, std::equal_to<>>;

/// The rows of a section by their first word, by what they begin a compound with, and by what they
/// end one with.
struct Book {
    Index whole;
    Index beginnings;
    Index endings;
    std::size_t longest_part = 0;
};

void enter(Book& book, const LexiconRow& row, Tongue tongue) {
    auto words = split_at_spaces(row.words);
    const auto first = words.front();
    const bool begins = row.phrase.ends_with('-');
    const bool ends = row.phrase.starts_with('-');
    const BookEntry entry{std::move(words), tongue, &row};
    if (begins) {
        book.beginnings[first].push_back(entry);
    }
    if (ends) {
        book.endings[first].push_back(entry);
    }
    if (begins || ends) {
        book.longest_part = std::max(book.longest_part, first.size());
    }
    book.whole[first].push_back(entry);
}

std::vector<Book> books_of_words() {
    std::vector<Book> books(static_cast<std::size_t>(first_of_phrases));
    for (const auto& file : lexicon_files()) {
        for (const auto& row : file.rows) {
            if (row.section < first_of_phrases) {
                enter(books[static_cast<std::size_t>(row.section)], row, file.tongue);
            }
        }
    }
    return books;
}

const Book& book_of(Section section) {
    static const auto books = books_of_words();
    return books[static_cast<std::size_t>(section)];
}

using Forms = std::vector<Form>;

/// How well rows fit at a place: more words before fewer, then the fewest letters taken off.
struct Fit {
    std::size_t count = 0;
    std::size_t changes = 0;
    std::vector<const LexiconRow*> rows;
};

void keep_better(Fit& best, std::size_t count, std::size_t changes, const LexiconRow* row) {
    if (count < best.count || (count == best.count && changes > best.changes)) {
        return;
    }
    if (count > best.count || changes < best.changes) {
        best = {count, changes, {}};
    }
    add_once(best.rows, row);
}

/// How far the words of the text are from the entry's, added up; nothing where it does not stand
/// at `place`.
std::optional<std::size_t> changes_at(const BookEntry& entry, const std::vector<Forms>& text,
                                      std::size_t place) {
    if (place + entry.words.size() > text.size()) {
        return std::nullopt;
    }
    std::size_t changes = 0;
    for (std::size_t i = 0; i < entry.words.size(); ++i) {
        const auto& forms = text[place + i];
        const auto found = std::ranges::find(forms, entry.words[i], &Form::text);
        const auto far =
            found == forms.end() ? no_form : found->changes[static_cast<std::size_t>(entry.tongue)];
        if (far == no_form) {
            return std::nullopt;
        }
        changes += far;
    }
    return changes;
}

void fit_whole(Fit& best, const Book& book, const std::vector<Forms>& text, std::size_t place) {
    for (const auto& form : text[place]) {
        const auto candidates = book.whole.find(form.text);
        if (candidates == book.whole.end()) {
            continue;
        }
        for (const auto& entry : candidates->second) {
            if (const auto changes = changes_at(entry, text, place)) {
                keep_better(best, entry.words.size(), *changes, entry.row);
            }
        }
    }
}

bool is_form_in(const Form& form, const BookEntry& entry) {
    return form.changes[static_cast<std::size_t>(entry.tongue)] != no_form;
}

/// A part of a compound: the rows that it has, and how long it is.
struct FitPart {
    std::vector<const LexiconRow*> rows;
    std::size_t size = 0;
};

/// The rows of the entries called `part`, of languages in which `form` is a form of the word.
std::vector<const LexiconRow*> rows_in(const Index& entries, std::string_view part,
                                       const Form& form) {
    std::vector<const LexiconRow*> rows;
    if (const auto found = entries.find(part); found != entries.end()) {
        for (const auto& entry : found->second) {
            if (is_form_in(form, entry)) {
                rows.push_back(entry.row);
            }
        }
    }
    return rows;
}

/// The longest entries that some form of the word begins, or ends, with. What is left over must be
/// part of a word too, so a single letter is not.
FitPart longest_part(const Book& book, const Forms& forms, bool at_end) {
    constexpr std::size_t least_rest = 2;
    const auto& parts = at_end ? book.endings : book.beginnings;
    FitPart longest;
    for (const auto& form : forms) {
        const std::string_view word{form.text};
        const auto most = word.size() < least_rest ? 0 : word.size() - least_rest;
        for (auto size = std::min(most, book.longest_part); size > longest.size; --size) {
            const auto part = at_end ? word.substr(word.size() - size) : word.substr(0, size);
            if (auto rows = rows_in(parts, part, form); !rows.empty()) {
                longest = {std::move(rows), size};
                break;
            }
        }
    }
    return longest;
}

/// What a compound's parts mean: its beginning and its end where they do not overlap, else the
/// longer of the two.
void fit_parts(Fit& best, const Book& book, const Forms& forms) {
    auto front = longest_part(book, forms, false);
    auto head = longest_part(book, forms, true);
    if (front.size + head.size > forms.front().text.size()) {
        (head.size >= front.size ? front : head).rows.clear();
    }
    for (const auto& part : {front, head}) {
        for (const auto* row : part.rows) {
            keep_better(best, 1, 0, row);
        }
    }
}

Fit best_at(const Book& book, const std::vector<Forms>& text, std::size_t place) {
    Fit best;
    fit_whole(best, book, text, place);
    if (best.count == 0 && book.longest_part > 0) {
        fit_parts(best, book, text[place]);
    }
    return best;
}

} // namespace

std::vector<Mention> mentions(const WordedText& text, Section section) {
    const auto& book = book_of(section);
    std::vector<Mention> found;
    for (std::size_t place = 0; place < text.words.size();) {
        const auto best = best_at(book, text.forms, place);
        for (const auto* row : best.rows) {
            const Mention mention{place, best.count, row->meaning, row->phrase};
            const bool known = std::ranges::any_of(found, [&](const Mention& other) {
                return other.first == place && other.meaning == mention.meaning;
            });
            if (!known) { // languages share many words
                found.push_back(mention);
            }
        }
        place += std::max<std::size_t>(best.count, 1);
    }
    return found;
}

std::vector<Mention> mentions(const WordedText& text, Section section, std::string_view meaning) {
    auto found = mentions(text, section);
    std::erase_if(found, [&](const Mention& mention) { return mention.meaning != meaning; });
    return found;
}

bool says(const WordedText& text, Section section, std::string_view meaning) {
    return !mentions(text, section, meaning).empty();
}

std::string words_of(const WordedText& text, const Mention& mention) {
    return words_at(text.words, mention.first, mention.count);
}

} // namespace thawslip::kitchen
