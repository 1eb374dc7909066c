#include "render/pdf.h"

#include "render/deflate.h"
#include "render/page_content.h"
#include "render/pdf_fonts.h"

#include <fmt/chrono.h>
#include <fmt/format.h>

namespace thawslip::render {

class PdfWriter::Document {
public:
    Document(const typeset::FontSet& fonts, const DocumentInfo& info, Sink sink)
        : file_{std::move(sink)}, fonts_{fonts, file_} {
        describe(info);
    }

    void add(const layout::Frame& frame) {
        const auto content = page_content(frame, fonts_);
        const auto stream = file_.reserve();
        file_.write_stream(stream, file_.dictionary(), deflater_.pack(content.operators),
                           PdfFile::Packing::Deflated);
        auto page = file_.dictionary();
        page.name("Type", "Page").reference("Parent", parent());
        auto box = page.array("MediaBox");
        box.number(0).number(0);
        box.real(frame.sheet.width.in_points()).real(frame.sheet.height.in_points());
        auto fonts = page.dictionary("Resources").dictionary("Font");
        for (const auto face : content.faces) {
            fonts.reference(fmt::format("F{}", face).c_str(), fonts_.reference(face));
        }
        page.reference("Contents", stream);
        const auto reference = file_.reserve();
        file_.write(reference, page);
        kids_.push_back(reference);
        ++pages_;
    }

    void finish() {
        close_node();
        fonts_.write();
        auto kids = file_.root_pages().array("Kids");
        for (const auto node : nodes_) {
            kids.reference(node);
        }
        file_.root_pages().number("Count", pages_);
        file_.finish();
    }

private:
    void describe(const DocumentInfo& info) {
        file_.info().text("Title", info.title);
        if (info.created) {
            file_.info().ascii("CreationDate",
                               fmt::format("D:{:%Y%m%d%H%M%S}Z", *info.created).c_str());
        }
        auto catalog = file_.catalog();
        if (!info.language.empty()) {
            catalog.ascii("Lang", info.language.c_str());
        }
        catalog.dictionary("ViewerPreferences")
            .name("PrintScaling", "None")
            .boolean("DisplayDocTitle", true);
    }

    /// The node of the page tree that the next page hangs from. A tree, since libharu's arrays
    /// end at 8191 elements.
    Reference parent() {
        constexpr std::size_t most_kids = 100;
        if (kids_.size() == most_kids) {
            close_node();
        }
        if (kids_.empty()) {
            nodes_.push_back(file_.reserve());
        }
        return nodes_.back();
    }

    void close_node() {
        if (kids_.empty()) {
            return;
        }
        auto node = file_.dictionary();
        node.name("Type", "Pages").number("Count", static_cast<int>(kids_.size()));
        file_.point_at_root_pages(node, "Parent");
        auto list = node.array("Kids");
        for (const auto page : kids_) {
            list.reference(page);
        }
        file_.write(nodes_.back(), node);
        kids_.clear();
    }

    PdfFile file_;
    PdfFonts fonts_;
    Deflater deflater_;
    std::vector<Reference> nodes_;
    std::vector<Reference> kids_; ///< pages of the last node
    int pages_ = 0;
};

PdfWriter::PdfWriter(const typeset::FontSet& fonts, const DocumentInfo& info, Sink sink)
    : document_{std::make_unique<Document>(fonts, info, std::move(sink))} {}
PdfWriter::PdfWriter(PdfWriter&&) noexcept = default;
PdfWriter& PdfWriter::operator=(PdfWriter&&) noexcept = default;
PdfWriter::~PdfWriter() = default;

void PdfWriter::add(const layout::Frame& frame) {
    document_->add(frame);
}

void PdfWriter::finish() {
    document_->finish();
}

std::string pdf(const std::vector<layout::Frame>& frames, const typeset::FontSet& fonts,
                const DocumentInfo& info) {
    std::string bytes;
    PdfWriter writer{fonts, info, [&bytes](std::string_view piece) { bytes += piece; }};
    for (const auto& frame : frames) {
        writer.add(frame);
    }
    writer.finish();
    return bytes;
}

} // namespace thawslip::render
