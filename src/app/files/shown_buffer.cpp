#include "app/files/shown_buffer.h"

#include "base/shown.h"

namespace thawslip::app {

ShownBuffer::ShownBuffer(std::ostream& to) : to_{to} {}

ShownBuffer::~ShownBuffer() {
    write_on(waiting_.size());
}

/// What stands at the beginning of `waiting_`.
void ShownBuffer::write_on(std::size_t count) {
    to_ << shown(std::string_view{waiting_}.substr(0, count));
    waiting_.erase(0, count);
}

int ShownBuffer::overflow(int c) {
    const char byte = traits_type::to_char_type(c);
    return traits_type::eq_int_type(c, traits_type::eof()) || xsputn(&byte, 1) == 1
               ? traits_type::not_eof(c)
               : traits_type::eof();
}

std::streamsize ShownBuffer::xsputn(const char* text, std::streamsize count) {
    waiting_.append(text, static_cast<std::size_t>(count));
    if (const auto line_end = waiting_.rfind('\n'); line_end != std::string::npos) {
        write_on(line_end + 1);
    }
    return to_ ? count : 0;
}

int ShownBuffer::sync() {
    write_on(waiting_.size() - unfinished_utf8(waiting_));
    return to_.flush() ? 0 : -1;
}

} // namespace thawslip::app
