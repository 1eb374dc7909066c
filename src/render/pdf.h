#pragma once

#include "layout/frame.h"
#include "typeset/face.h"

#include <chrono>
#include <functional>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::render {

/// What a reader shows about the document, never on a page.
struct DocumentInfo {
    std::string title;    ///< UTF-8
    std::string language; ///< of the words, as BCP 47 says it: "en"; empty when not told
    std::optional<std::chrono::sys_seconds>
        created; ///< told only on request: same input, same file
};

/// A PDF that cannot be made: libharu ran out of memory or a limit of the format was reached.
class PdfError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

/// Takes the bytes of a document, piece by piece and in order. May throw; the writer passes it on.
using Sink = std::function<void(std::string_view)>;

/// Writes a PDF page by page. A page is drawn, packed and handed to the sink when it is added, so
/// that memory does not grow with the number of pages (but for some 200 bytes each).
///
/// Sizes are true: MediaBox is the sheet, and viewers are asked not to scale when printing. Glyphs
/// stand within 0.01 pt of where the frame says. Only the glyphs used are embedded, each with the
/// text it stands for. The same calls give the same bytes.
class PdfWriter {
public:
    /// \pre `fonts` outlives the writer
    PdfWriter(const typeset::FontSet& fonts, const DocumentInfo& info, Sink sink);
    PdfWriter(PdfWriter&&) noexcept;
    PdfWriter& operator=(PdfWriter&&) noexcept;
    ~PdfWriter();

    /// \throws PdfError; std::domain_error for a length that no sheet has; what the sink throws
    void add(const layout::Frame& frame);

    /// Writes the fonts and the tables that a reader starts from; nothing may be added after.
    /// \pre at least one frame was added: a PDF has pages
    void finish();

private:
    class Document;
    std::unique_ptr<Document> document_;
};

/// The whole document in memory.
/// \pre `frames` is not empty
std::string pdf(const std::vector<layout::Frame>& frames, const typeset::FontSet& fonts,
                const DocumentInfo& info);

} // namespace thawslip::render
