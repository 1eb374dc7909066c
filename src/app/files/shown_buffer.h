#pragma once

#include <ostream>
#include <streambuf>
#include <string>

namespace thawslip::app {

/// What a stream writes into so that everything stands as base/shown.h lets it: what is said of
/// files, dates and dishes comes from anywhere, and a terminal does what it is sent. Writes on at
/// every line's end.
class ShownBuffer : public std::streambuf {
public:
    explicit ShownBuffer(std::ostream& to);
    ShownBuffer(const ShownBuffer&) = delete;
    ShownBuffer& operator=(const ShownBuffer&) = delete;
    ~ShownBuffer() override;

private:
    int overflow(int c) override;
    std::streamsize xsputn(const char* text, std::streamsize count) override;
    int sync() override;
    void write_on(std::size_t count);

    std::ostream& to_;
    std::string waiting_;
};

} // namespace thawslip::app
