#include "toml/outline.h"

#include <algorithm>

namespace thawslip::toml {
namespace {

class Follower {
public:
    Follower(std::string_view text, std::size_t depth) : text_{text}, depth_{depth} {}

    Outline take() { return std::move(outline_); }

    void follow() {
        while (at_ < text_.size() && !outline_.too_deep) {
            const char c = text_[at_];
            if (c == '"' || c == '\'') {
                skip_string(c);
            } else if (c == '#') {
                at_ = std::min(text_.find('\n', at_), text_.size());
            } else {
                step(c);
                ++at_;
            }
        }
    }

private:
    void step(char c) {
        switch (c) {
        case '[':
        case '{':
            outline_.open_brackets.push_back(at_);
            check(outline_.open_brackets.size());
            dots_ = 0;
            break;
        case ']':
        case '}':
            if (!outline_.open_brackets.empty()) {
                outline_.open_brackets.pop_back();
            }
            break;
        case '.': check(++dots_ + 1); break;
        case '\n':
        case '=':
        case ',': dots_ = 0; break;
        default: break;
        }
    }

    void check(std::size_t depth) {
        if (depth > depth_) {
            outline_.too_deep = at_;
        }
    }

    void skip_string(char quote) {
        const auto start = at_;
        const std::string_view rest = text_.substr(at_);
        const bool multi = rest.size() >= 3 && rest[1] == quote && rest[2] == quote;
        at_ += multi ? 3 : 1;
        const bool closed = multi ? close_multi_line(quote) : close_single_line(quote);
        if (!closed) {
            outline_.open_string = start;
        }
    }

    bool close_single_line(char quote) {
        for (; at_ < text_.size() && text_[at_] != '\n'; ++at_) {
            if (text_[at_] == quote) {
                ++at_;
                return true;
            }
            if (text_[at_] == '\\' && quote == '"') {
                ++at_;
            }
        }
        return at_ < text_.size(); // a line end closes it too: an error that a parser reports
    }

    /// Up to two quotes may stand directly before the closing three (TOML 1.0, "String").
    bool close_multi_line(char quote) {
        for (; at_ < text_.size(); ++at_) {
            if (text_[at_] == '\\' && quote == '"') {
                ++at_;
            } else if (text_.substr(at_, 3) == std::string_view{triple(quote)}) {
                at_ += 3;
                for (int extra = 0; extra < 2 && at_ < text_.size() && text_[at_] == quote;
                     ++extra) {
                    ++at_;
                }
                return true;
            }
        }
        at_ = text_.size();
        return false;
    }

    static const char* triple(char quote) { return quote == '"' ? "\"\"\"" : "'''"; }

    std::string_view text_;
    std::size_t depth_;
    std::size_t at_ = 0;
    std::size_t dots_ = 0;
    Outline outline_;
};

} // namespace

Outline outline(std::string_view text, std::size_t stop, std::size_t depth) {
    Follower follower{text.substr(0, std::min(stop, text.size())), depth};
    follower.follow();
    return follower.take();
}

} // namespace thawslip::toml
