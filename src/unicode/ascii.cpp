#include "unicode/ascii.h"

#include "base/letters.h"
#include "base/utf8.h"
#include "unicode/ascii_table.h"
#include "unicode/character.h"
#include "unicode/icu_error.h"

#include <algorithm>
#include <memory>
#include <unicode/normalizer2.h>
#include <unicode/translit.h>
#include <unicode/uchar.h>
#include <vector>

namespace thawslip::unicode {
namespace {

char32_t lower(char32_t c) {
    return static_cast<char32_t>(u_tolower(static_cast<UChar32>(c)));
}

bool is_capital(char32_t c) {
    return lower(c) != c;
}

bool is_printable_ascii(char32_t c) {
    return c >= 0x20 && c < 0x7F;
}

/// The characters with their accents apart, and without what is never seen.
std::u32string decomposed(std::string_view text) {
    UErrorCode error = U_ZERO_ERROR;
    const auto* nfd = icu::Normalizer2::getNFDInstance(error);
    require_success(error, "normalization data");
    const auto source = icu::UnicodeString::fromUTF8(
        icu::StringPiece{text.data(), static_cast<int32_t>(text.size())});
    std::string apart;
    nfd->normalize(source, error).toUTF8String(apart);
    require_success(error, "decomposing");
    auto characters = to_utf32(apart);
    std::erase_if(characters, [](char32_t c) { return is_invisible(c); });
    return characters;
}

/// CLDR's rules for whatever our tables lack. They take a tenth of a second to load, which is
/// why the letters of Europe have tables of their own.
std::string transliterated(char32_t c) {
    UErrorCode error = U_ZERO_ERROR;
    const std::unique_ptr<icu::Transliterator> rules{
        icu::Transliterator::createInstance("Any-Latin; Latin-ASCII", UTRANS_FORWARD, error)};
    require_success(error, "transliteration rules");
    icu::UnicodeString text{static_cast<UChar32>(c)};
    rules->transliterate(text);
    std::string ascii;
    text.toUTF8String(ascii);
    const bool plain = std::all_of(ascii.begin(), ascii.end(), [](char byte) {
        return is_printable_ascii(static_cast<unsigned char>(byte));
    });
    return plain ? ascii : "?";
}

/// Writes the ASCII of one text, character after character.
class Folder {
public:
    explicit Folder(std::u32string characters) : characters_{std::move(characters)} {}

    std::string run() && {
        while (at_ < characters_.size()) {
            fold(characters_[at_]);
            ++at_;
        }
        return std::move(ascii_);
    }

private:
    void fold(char32_t c) {
        constexpr char32_t struck_through = U'\u0338'; // "≠" comes apart into "=" and it
        if (is_printable_ascii(c)) {
            ascii_ += next() == struck_through ? "!" : "";
            ascii_.push_back(static_cast<char>(c));
        } else if (is_space(c) || is_control(c)) {
            ascii_.push_back(' ');
        } else if (const auto fraction = ascii_fraction(c)) {
            // "1½" is one and a half, not eleven halves.
            part_from([](char last) { return is_digit<char>(last); });
            ascii_ += *fraction;
        } else if (c == U'°' || c == U'℃' || c == U'℉') {
            fold_degree(c);
        } else if (lower(c) == U'υ' && follows_vowel()) {
            const char sound = lower(previous()) == U'ο' ? 'u' : 'v';
            ascii_.push_back(is_capital(c) ? to_upper(sound) : sound);
        } else if (!is_mark(c)) {
            fold_letter(c);
        }
    }

    /// "180°C" and "180 °C" are both "180 C"; a lone degree sign is "deg".
    void fold_degree(char32_t c) {
        part_from([](char last) { return last != ' '; });
        const auto scale = next();
        if (c != U'°') {
            ascii_.push_back(c == U'℃' ? 'C' : 'F');
        } else if (scale != U'C' && scale != U'F') {
            ascii_ += "deg";
        }
    }

    void fold_letter(char32_t c) {
        const auto known = ascii_for(lower(c));
        auto ascii = known ? std::string{*known} : transliterated(c);
        if (known && is_capital(c)) {
            raise(ascii, is_shouted() ? ascii.size() : 1);
        }
        ascii_ += ascii;
    }

    static void raise(std::string& word, std::size_t letters) {
        for (std::size_t i = 0; i < std::min(letters, word.size()); ++i) {
            word[i] = to_upper(word[i]);
        }
    }

    /// Whether the capital stands in a word of capitals: "ЩИ" is "SHCHI", "Щи" "Shchi".
    bool is_shouted() const {
        auto after = at_ + 1;
        while (after < characters_.size() && is_mark(characters_[after])) {
            ++after;
        }
        const char32_t following = after < characters_.size() ? characters_[after] : U' ';
        const bool word_goes_on = u_isalpha(static_cast<UChar32>(following)) != 0;
        return is_capital(word_goes_on ? following : previous());
    }

    /// An accent on the first vowel parts the two: "αυ" is "av", "άυ" is "ay".
    bool follows_vowel() const {
        const auto c = lower(previous());
        return c == U'α' || c == U'ε' || c == U'ο';
    }

    template <class Predicate>
    void part_from(Predicate predicate) {
        if (!ascii_.empty() && predicate(ascii_.back())) {
            ascii_.push_back(' ');
        }
    }

    char32_t previous() const { return at_ > 0 ? characters_[at_ - 1] : U' '; }
    char32_t next() const { return at_ + 1 < characters_.size() ? characters_[at_ + 1] : U' '; }

    std::u32string characters_;
    std::size_t at_ = 0;
    std::string ascii_;
};

} // namespace

std::string to_ascii(std::string_view text) {
    return Folder{decomposed(text)}.run();
}

std::string fold_for_search(std::string_view text) {
    std::string folded;
    for (const char c : to_ascii(text)) {
        if (c != ' ') {
            folded.push_back(to_lower(c));
        } else if (!folded.empty() && folded.back() != ' ') {
            folded.push_back(' ');
        }
    }
    if (!folded.empty() && folded.back() == ' ') {
        folded.pop_back();
    }
    return folded;
}

} // namespace thawslip::unicode
