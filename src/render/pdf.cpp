#include "render/pdf.h"

#include "render/deflate.h"
#include "render/page_content.h"
#include "render/pdf_file.h"
#include "render/pdf_fonts.h"

#include <cassert>
#include <fmt/format.h>

namespace thawslip::render {
namespace {

/// Pages to a node of the page tree: a tree of two levels holds two million of them before any
/// array meets libharu's limit of 32,767.
constexpr int pages_per_node = 64;

/// ISO 32000-1, 7.9.4 "Dates", in universal time.
std::string pdf_date(std::chrono::sys_seconds time) {
    const auto day = std::chrono::floor<std::chrono::days>(time);
    const std::chrono::year_month_day date{day};
    const std::chrono::hh_mm_ss clock{time - day};
    return fmt::format("D:{:04}{:02}{:02}{:02}{:02}{:02}Z", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                       clock.hours().count(), clock.minutes().count(), clock.seconds().count());
}

void describe(PdfFile& file, const DocumentInfo& info) {
    auto catalog = file.catalog();
    // Labels must come out as large as they are: ask the print dialog not to fit them to the page
    // (ISO 32000-1, Table 150), and viewers to show the title rather than the file's name.
    catalog.dictionary("ViewerPreferences")
        .name("PrintScaling", "None")
        .boolean("DisplayDocTitle", true);
    if (!info.language.empty()) {
        catalog.ascii("Lang", info.language.c_str());
    }
    file.info().text("Title", info.title);
    if (info.created) {
        const auto date = pdf_date(*info.created);
        file.info().ascii("CreationDate", date.c_str()).ascii("ModDate", date.c_str());
    }
}

void set_media_box(Dictionary dictionary, Size sheet) {
    dictionary.array("MediaBox")
        .number(0)
        .number(0)
        .real(sheet.width.in_points())
        .real(sheet.height.in_points());
}

/// A node of the page tree that is still filling up.
struct PageNode {
    Reference reference;
    OwnedDictionary dictionary;
    Array kids;
    int count = 0;
};

PageNode new_node(PdfFile& file) {
    auto dictionary = file.dictionary();
    dictionary.name("Type", "Pages").reference("Parent", file.root_pages_reference());
    auto kids = dictionary.array("Kids");
    return {file.reserve(), std::move(dictionary), kids, 0};
}

} // namespace

class PdfWriter::Document {
public:
    Document(const typeset::FontSet& fonts, const DocumentInfo& info, Sink sink)
        : file_{std::move(sink)}, fonts_{fonts} {
        describe(file_, info);
    }

    void add(const layout::Frame& frame);
    void finish();

private:
    Reference write_content(const layout::Frame& frame);
    void close_node();

    PdfFile file_;
    PdfFonts fonts_;
    Deflater deflater_;
    std::optional<PageNode> node_;
    std::vector<Reference> nodes_;
    Size usual_sheet_; ///< of the first page: others inherit it from the top of the tree
    int pages_ = 0;
};

Reference PdfWriter::Document::write_content(const layout::Frame& frame) {
    const auto content = page_content(frame, fonts_);
    const auto reference = file_.reserve();
    file_.write_stream(reference, file_.dictionary(), deflater_.pack(content),
                       PdfFile::Packing::Deflated);
    return reference;
}

void PdfWriter::Document::add(const layout::Frame& frame) {
    if (!node_) {
        node_ = new_node(file_);
    }
    if (pages_ == 0) {
        usual_sheet_ = frame.sheet;
    }
    auto page = file_.dictionary();
    page.name("Type", "Page").reference("Parent", node_->reference);
    page.reference("Contents", write_content(frame));
    if (frame.sheet != usual_sheet_) {
        set_media_box(page, frame.sheet);
    }
    const auto reference = file_.reserve();
    file_.write(reference, page);
    node_->kids.reference(reference);
    ++pages_;
    if (++node_->count == pages_per_node) {
        close_node();
    }
}

void PdfWriter::Document::close_node() {
    node_->dictionary.number("Count", node_->count);
    file_.write(node_->reference, node_->dictionary);
    nodes_.push_back(node_->reference);
    node_.reset();
}

void PdfWriter::Document::finish() {
    assert(pages_ > 0 && "a PDF has pages");
    if (node_) {
        close_node();
    }
    auto root = file_.root_pages();
    auto kids = root.array("Kids");
    for (const auto node : nodes_) {
        kids.reference(node);
    }
    root.number("Count", pages_);
    set_media_box(root, usual_sheet_);
    fonts_.write(file_, deflater_, root.dictionary("Resources"));
    file_.finish();
}

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
