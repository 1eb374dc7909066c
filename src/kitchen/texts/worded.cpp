#include "kitchen/texts/lexicon.h"
#include "kitchen/texts/text.h"

namespace thawslip::kitchen {
namespace {

/// The decimal point or comma of a number; else one that ends a clause.
bool is_in_number(std::string_view text, std::size_t at) {
    return at > 0 && is_digit_at(text, at - 1) && is_digit_at(text, at + 1) &&
           (text[at] == '.' || text[at] == ',');
}

/// How many bytes of `text` from `at` on part two clauses; 0 where none do.
std::size_t clause_break(std::string_view text, std::size_t at) {
    constexpr std::string_view marks = ".,;:!?()[]\n";
    if (marks.find(text[at]) != std::string_view::npos) {
        return 1;
    }
    for (const std::string_view mark : {" - ", "–", "—", "…"}) {
        if (text.substr(at).starts_with(mark)) {
            return mark.size();
        }
    }
    return 0;
}

class Cutter {
public:
    void letters(std::string_view bytes) { run_ += bytes; }
    void digit(char c) {
        end_run();
        number_ += c;
    }
    void end_clause() {
        end_word();
        ++clause_;
    }
    void end_number() {
        if (!number_.empty()) {
            add(std::move(number_));
            number_.clear();
        }
    }
    WordedText take() {
        end_word();
        return std::move(text_);
    }

private:
    void add(std::string word) {
        text_.forms.push_back(dictionary_forms(word));
        text_.words.push_back(std::move(word));
        text_.clauses.push_back(clause_);
    }
    void end_run() {
        for (auto& word : words_of(run_)) {
            add(std::move(word));
        }
        run_.clear();
    }
    void end_word() {
        end_number();
        end_run();
    }

    WordedText text_;
    std::string run_;
    std::string number_;
    int clause_ = 0;
};

} // namespace

WordedText worded(std::string_view text) {
    Cutter cutter;
    for (std::size_t at = 0; at < text.size();) {
        if (is_digit_at(text, at) || is_in_number(text, at)) {
            cutter.digit(text[at++]);
            continue;
        }
        cutter.end_number();
        if (const auto size = clause_break(text, at); size > 0) {
            cutter.end_clause();
            at += size;
        } else {
            cutter.letters(text.substr(at++, 1));
        }
    }
    return cutter.take();
}

} // namespace thawslip::kitchen
