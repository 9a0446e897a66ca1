// The drilling template: a bracket at true size, to be laid on it. One layout for PDF, paper and preview.
#pragma once

#include <QPageLayout>

#include "widgets/papers/kit/printed_sheets.h"
#include "widgets/papers/template_scene.h"

namespace bolthole {

/// The words every sheet bears.
inline constexpr const char* kTemplateCaution = QT_TRANSLATE_NOOP(
    "Bolthole", "check the rulers before you drill; bracket strength is for a qualified person");

/// Page of a paper with the template's margins, turned the way that takes fewer sheets.
[[nodiscard]] QPageLayout templatePageOf(PaperSize paper, const TemplateRequest& request);

/// Most sheets one face is cut into.
inline constexpr int kMostTemplateTiles = 16;
/// Why there is no template of the bracket on this paper, and which paper it needs; empty: there is one.
[[nodiscard]] QString templateRefusal(const TemplateRequest& request, const QPageLayout& page);

/// How one face is cut: all tiles of one size, neighbors overlap by kTemplateOverlap.
struct TemplateTiles {
    int across = 1;
    int down = 1;
    QRectF area;            ///< of a tile on its page, mm from the paintable area's corner
    QPointF origin;         ///< where the scene's origin stands on the page of the first tile
    bool keyBeside = true;  ///< the key stands beside the drawing; else on sheets of its own at the end

    [[nodiscard]] int count() const { return across * down; }
    /// Where the scene's origin stands on the page of a tile.
    [[nodiscard]] QPointF originOf(int column, int row) const;
};
/// Neighboring tiles show a strip of this width both, mm.
inline constexpr double kTemplateOverlap = 14;

/// Lays the template out for a page and paints it sheet by sheet: first all of the face seen from the left,
/// then its mirror image, seen from the right. Lengths in mm on paper, true to size, never fitted to the
/// page. The key of the holes stands beside the drawing where that needs no more sheets; what does not find
/// room there goes on sheets of its own at the end. What is too large for a page is cut into tiles with
/// alignment marks.
class DrillingTemplate : public PrintedSheets {
  public:
    /// The car must have passed findFaults(); the page should be one templateRefusal() has nothing against.
    DrillingTemplate(const TemplateRequest& request, const QPageLayout& page);
};

}  // namespace bolthole
