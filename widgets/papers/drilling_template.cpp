#include "widgets/papers/drilling_template.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/units/text.h"
#include "widgets/kit/translation.h"
#include "widgets/papers/kit/paper_frame.h"
#include "widgets/papers/kit/paper_marks.h"
#include "widgets/papers/kit/paper_text.h"
#include "widgets/papers/template_drawing.h"

namespace bolthole {

namespace {

constexpr double kUnderTitle = 3.6;     // mm, white above the drawing
constexpr double kStartingLines = 2.6;  // of paper, for what nobody measured; then it is cut short
constexpr double kRulerStrip = 10;      // at the left, for the upright ruler
constexpr double kKeyWidth = 60;
constexpr double kKeyGap = 4;
constexpr double kDirections = 25;  // height
constexpr double kLeast = 20;       // mm; no tile is smaller, whatever page a printer offers
constexpr double kMark = 4;         // radius of an alignment mark's cross
constexpr std::array kPapers{PaperSize::letter, PaperSize::a4, PaperSize::tabloid, PaperSize::a3};
constexpr std::array kPaperNames{"letter", "A4", "tabloid", "A3"};

// What nobody measured has lines of its own, so that the line that says which face one sees is never cut.
PaperFrame frameOf(const TemplateRequest& request, const QPageLayout& page, const PrintFonts& fonts) {
    const QSizeF size = paintable(page);
    const QString starts =
        fonts.elided(templateStarts(request), kTemplateStrong, kStartingLines * size.width());
    FrameStyle style{.title = 4.4, .hasSecondLine = true, .leastFoot = 24};
    for (const TemplateFace face : {TemplateFace::left, TemplateFace::right}) {
        style.neverCut << templateScene(request, face).faceWords;
    }
    return {fonts, size, style, starts, {}};
}

QRectF bodyOf(const TemplateRequest& request, const QPageLayout& page) {
    const PrintFonts fonts;
    return frameOf(request, page, fonts).body();
}

// Without a key the directions stand above the drawing.
QRectF drawingArea(const QRectF& body, bool keyBeside) {
    const double aside = keyBeside ? kKeyWidth + kKeyGap : 0;
    const QRectF area = body.adjusted(kRulerStrip, kUnderTitle + (keyBeside ? 0 : kDirections), -aside, -2);
    return {area.topLeft(), QSizeF(std::max(area.width(), kLeast), std::max(area.height(), kLeast))};
}

int tilesFor(double length, double room) {
    const double overlap = std::min(kTemplateOverlap, room / 2);
    return length <= room ? 1 : static_cast<int>(std::ceil((length - overlap) / (room - overlap)));
}

double overlapOf(double room) {
    return std::min(kTemplateOverlap, room / 2);
}

// The content stands in the middle of its tiles.
TemplateTiles tilesOf(const QRectF& content, const QRectF& body, bool keyBeside) {
    TemplateTiles tiles;
    tiles.keyBeside = keyBeside;
    tiles.area = drawingArea(body, keyBeside);
    const QSizeF room = tiles.area.size();
    tiles.across = tilesFor(content.width(), room.width());
    tiles.down = tilesFor(content.height(), room.height());
    const auto whole = [](int count, double each) { return count * each - (count - 1) * overlapOf(each); };
    const QPointF spare((whole(tiles.across, room.width()) - content.width()) / 2,
                        (whole(tiles.down, room.height()) - content.height()) / 2);
    tiles.origin = tiles.area.topLeft() + spare - content.topLeft();
    return tiles;
}

TemplateTiles tilesOf(const QRectF& content, const QRectF& body) {
    const TemplateTiles beside = tilesOf(content, body, true);
    const TemplateTiles alone = tilesOf(content, body, false);
    return alone.count() < beside.count() ? alone : beside;
}

int tileCount(const TemplateRequest& request, const QPageLayout& page) {
    return tilesOf(templateScene(request, TemplateFace::left).content, bodyOf(request, page)).count();
}

/// One sheet: a tile of a face, or more of the key.
struct TemplateSheet {
    TemplateFace face = TemplateFace::left;
    int column = -1;  // -1: key only
    int row = 0;
    std::size_t firstOfKey = 0;  // of its columns; on a sheet that is key only
};

// What is said of a hole: its heading, and the rest set in.
SheetBlock holeBlock(const QStringList& lines, const PrintFonts& fonts) {
    constexpr double kSetIn = 4;
    TextTable table;
    table.columns = {{.share = kSetIn / kKeyWidth}, {.share = 1 - kSetIn / kKeyWidth}};
    table.pad = 0;
    table.gap = 0;
    table.hasRules = false;
    for (const QString& line : lines) {
        table.rows.push_back(table.rows.empty() ? TextRow{{line, true, 2}} : TextRow{QString(), line});
    }
    const LaidTable laid(table, kKeyWidth, fonts);
    SheetBlock block;
    block.above = 1.6;
    block.height = laid.height();
    block.paint = [laid](QPainter& painter, const QRectF& box) {
        laid.paint(painter, box.topLeft(), box.height());
    };
    return block;
}

}  // namespace

QPointF TemplateTiles::originOf(int column, int row) const {
    return origin - QPointF(column * (area.width() - overlapOf(area.width())),
                            row * (area.height() - overlapOf(area.height())));
}

QPageLayout templatePageOf(PaperSize paper, const TemplateRequest& request) {
    const QPageLayout upright = pageOf(paper, QPageLayout::Portrait);
    const QPageLayout across = pageOf(paper, QPageLayout::Landscape);
    return tileCount(request, across) <= tileCount(request, upright) ? across : upright;
}

QString templateRefusal(const TemplateRequest& request, const QPageLayout& page) {
    const QRectF content = templateScene(request, TemplateFace::left).content;
    const int count = tilesOf(content, bodyOf(request, page)).count();
    if (count <= kMostTemplateTiles) {
        return {};
    }
    const QString size = tr("At true size the drawing of this bracket is %1 by %2, %3 sheets of "
                            "this paper for each face; a template is made for %4 at most. ")
                             .arg(templateLength(content.width() * kMetresPerMillimetre, request.style),
                                  templateLength(content.height() * kMetresPerMillimetre, request.style))
                             .arg(count)
                             .arg(kMostTemplateTiles);
    for (std::size_t paper = 0; paper < kPapers.size(); ++paper) {
        if (tileCount(request, templatePageOf(kPapers[paper], request)) <= kMostTemplateTiles) {
            return size + tr("It needs %1 paper.").arg(QLatin1String(kPaperNames[paper]));
        }
    }
    return size + tr("No paper is large enough: check its corners and holes.");
}

namespace {

class LaidTemplate : public LaidOutPaper {
  public:
    LaidTemplate(const TemplateRequest& asked, const QPageLayout& layout)
        : request_(asked),
          left_(templateScene(asked, TemplateFace::left)),
          right_(templateScene(asked, TemplateFace::right)),
          frame_(frameOf(asked, layout, fonts_)),
          keyBox_(frame_.body().adjusted(frame_.body().width() - kKeyWidth, kUnderTitle + 1, 0, -2)) {
        layOutKey();
        layOutSheets();
    }

    [[nodiscard]] int count() const override { return static_cast<int>(sheets_.size()); }
    void paint(QPainter& painter, int index) const override;

  private:
    [[nodiscard]] const TemplateScene& scene(TemplateFace face) const {
        return face == TemplateFace::left ? left_ : right_;
    }
    [[nodiscard]] TemplateTiles tiles(TemplateFace face) const {
        return tilesOf(scene(face).content, frame_.body());
    }
    [[nodiscard]] double notesHeight() const { return notesColumn_.back().box.bottom(); }
    void layOutKey();
    void layOutSheets();
    [[nodiscard]] int columnsPerSheet() const;
    [[nodiscard]] QString partWords(const TemplateSheet& sheet) const;
    [[nodiscard]] SheetTitle title(int index) const;
    void paintFoot(QPainter& painter) const;
    void paintTile(QPainter& painter, const TemplateSheet& sheet) const;
    void paintMarks(QPainter& painter, const TemplateTiles& tiles, const TemplateSheet& sheet) const;
    void paintMark(QPainter& painter, QPointF at, const QString& name) const;
    void paintKey(QPainter& painter, TemplateFace face) const;
    void paintMoreKey(QPainter& painter, const TemplateSheet& sheet) const;

    TemplateRequest request_;
    TemplateScene left_;
    TemplateScene right_;
    PrintFonts fonts_;
    PaperFrame frame_;
    QRectF keyBox_;
    std::vector<SheetBlock> notes_;
    FlowPage notesColumn_;
    std::vector<SheetBlock> key_;   // a block a hole, as many as stand beside the drawing
    FlowPage keyColumn_;            // empty: none does
    std::vector<SheetBlock> more_;  // the others
    std::vector<FlowPage> moreColumns_;
    std::vector<TemplateSheet> sheets_;
};

void LaidTemplate::layOutKey() {
    for (const QString& note : left_.notes) {
        notes_.push_back(wordsBlock(note, kTemplateText, kKeyWidth, fonts_));
        notes_.back().above = kTemplateText.leading();
    }
    notesColumn_ = stacked(notes_, kKeyWidth);
    // What is to be drilled comes first, so that it and its warnings stand on the sheet that is taped on.
    for (const bool isPlanned : {true, false}) {
        for (const TemplateHole& hole : left_.holes) {
            if (hole.planned == isPlanned) {
                more_.push_back(holeBlock(hole.keyLines, fonts_));
            }
        }
    }
    if (tiles(TemplateFace::left).keyBeside) {
        const double room = keyBox_.height() - kDirections - notesHeight() - 3 * kTemplateText.leading();
        const auto beside = static_cast<std::ptrdiff_t>(flowed(more_, {kKeyWidth, room}).front().size());
        key_.assign(more_.begin(), more_.begin() + beside);
        more_.erase(more_.begin(), more_.begin() + beside);
        keyColumn_ = stacked(key_, kKeyWidth);
    }
    moreColumns_ = flowed(more_, {kKeyWidth, keyBox_.height()});
}

// The notes take one where the key stands on sheets of its own.
int LaidTemplate::columnsPerSheet() const {
    const int columns = static_cast<int>((frame_.body().width() + kKeyGap) / (kKeyWidth + kKeyGap));
    return std::max(1, columns - (keyColumn_.empty() ? 1 : 0));
}

void LaidTemplate::layOutSheets() {
    for (const TemplateFace face : {TemplateFace::left, TemplateFace::right}) {
        for (int row = 0; row < tiles(face).down; ++row) {
            for (int column = 0; column < tiles(face).across; ++column) {
                sheets_.push_back({face, column, row, 0});
            }
        }
    }
    for (std::size_t first = 0; first < moreColumns_.size();
         first += static_cast<std::size_t>(columnsPerSheet())) {
        sheets_.push_back({TemplateFace::left, -1, 0, first});
    }
}

QString LaidTemplate::partWords(const TemplateSheet& sheet) const {
    if (sheet.column < 0) {
        return keyColumn_.empty() && sheet.firstOfKey == 0 ? tr(": the holes") : tr(": the holes, continued");
    }
    return tiles(sheet.face).count() == 1 ? QString()
                                          : tr(": column %1 of %2, row %3 of %4")
                                                .arg(sheet.column + 1)
                                                .arg(tiles(sheet.face).across)
                                                .arg(sheet.row + 1)
                                                .arg(tiles(sheet.face).down);
}

SheetTitle LaidTemplate::title(int index) const {
    const TemplateSheet& sheet = sheets_[static_cast<std::size_t>(index)];
    SheetTitle title{left_.bracketWords.simplified(), tr(": drilling template, 1:1"), {}, {}, 0};
    title.asides = {{sheetWords(index, count()) + partWords(sheet)}, PaperRun{}};
    title.under = {
        {sheet.column < 0 ? tr("The holes, by their numbers") : scene(sheet.face).faceWords, true}};
    return title;
}

void LaidTemplate::paintFoot(QPainter& painter) const {
    const QRectF foot = frame_.foot();
    paintMetricRuler(painter, {3, foot.bottom() - 3}, fonts_);
    const double x = kMetricRuler + 16;
    const double width = foot.width() - x;
    const QStringList caution = fonts_.wrapped(tr(kTemplateCaution), kTemplateStrong, width);
    const QStringList how =
        fonts_.wrapped(tr("Print at 100 %, never fitted to the page. One ruler tells the width, "
                          "the other the height."),
                       kTemplateText, width);
    painter.setPen(Qt::black);
    const double first = foot.top() + 4.6;
    fonts_.draw(painter, {x, first}, caution, kTemplateStrong);
    const double second = first + static_cast<double>(caution.size()) * kTemplateText.leading();
    fonts_.draw(painter, {x, second}, how, kTemplateText);
    const QString car = QString::fromStdString(request_.car.title).simplified();
    fonts_.draw(painter, {foot.right(), foot.bottom() - 1}, fonts_.elided(car, kTemplateText, width),
                kTemplateText, Qt::AlignRight);
}

void LaidTemplate::paintMark(QPainter& painter, QPointF at, const QString& name) const {
    painter.setPen(kitPen(kThinnestLine));
    painter.drawLine(at - QPointF(kMark, 0), at + QPointF(kMark, 0));
    painter.drawLine(at - QPointF(0, kMark), at + QPointF(0, kMark));
    painter.drawRect(QRectF(at - QPointF(1.5, 1.5), QSizeF(3, 3)));
    painter.setPen(Qt::black);
    fonts_.draw(painter, at + QPointF(2.2, -1.2), name, {2.0, false});
}

// Two marks on each seam, in the middle of the strip both sheets show; both sheets name them alike.
void LaidTemplate::paintMarks(QPainter& painter, const TemplateTiles& tiles,
                              const TemplateSheet& sheet) const {
    const QRectF& area = tiles.area;
    const auto seams = [](int index, int count) {
        std::vector<int> found;
        for (const int seam : {index, index + 1}) {
            if (seam > 0 && seam < count) {
                found.push_back(seam);
            }
        }
        return found;
    };
    for (const int seam : seams(sheet.column, tiles.across)) {
        const double x = seam == sheet.column ? area.left() + overlapOf(area.width()) / 2
                                              : area.right() - overlapOf(area.width()) / 2;
        for (const int end : {1, 2}) {
            paintMark(painter, {x, area.top() + area.height() * (end == 1 ? 0.25 : 0.75)},
                      QStringLiteral("%1%2%3").arg(QChar('A' + seam - 1)).arg(sheet.row + 1).arg(end));
        }
    }
    for (const int seam : seams(sheet.row, tiles.down)) {
        const double y = seam == sheet.row ? area.top() + overlapOf(area.height()) / 2
                                           : area.bottom() - overlapOf(area.height()) / 2;
        for (const int end : {1, 2}) {
            paintMark(painter, {area.left() + area.width() * (end == 1 ? 0.25 : 0.75), y},
                      QStringLiteral("%1%2%3").arg(QChar('Z' - seam + 1)).arg(sheet.column + 1).arg(end));
        }
    }
}

void LaidTemplate::paintTile(QPainter& painter, const TemplateSheet& sheet) const {
    const TemplateScene& shown = scene(sheet.face);
    const TemplateTiles tiles = this->tiles(sheet.face);
    painter.save();
    painter.setClipRect(tiles.area);
    painter.translate(tiles.originOf(sheet.column, sheet.row));
    TemplateDrawing(painter, shown, fonts_).paint();
    painter.restore();
    if (tiles.count() > 1) {
        paintMarks(painter, tiles, sheet);
    }
    const double ruler = std::min(frame_.body().bottom() - 4, tiles.area.top() + kInchRuler + 6);
    paintInchRuler(painter, {1, ruler}, fonts_);
}

void LaidTemplate::paintKey(QPainter& painter, TemplateFace face) const {
    if (keyColumn_.empty()) {
        paintDirections(painter, {kRulerStrip + 2, keyBox_.top()}, face, fonts_);
        fonts_.draw(painter, {kRulerStrip + 56, keyBox_.top() + 12},
                    fonts_.wrapped(tr("The holes by their numbers, and what has to be known of this "
                                      "sheet: on the last one."),
                                   kTemplateText, frame_.body().width() - kRulerStrip - 58),
                    kTemplateText);
        return;
    }
    painter.setPen(kitPen(kThinnestLine));
    const double rule = keyBox_.left() - kKeyGap / 2;
    painter.drawLine(QPointF(rule, keyBox_.top() - 1), QPointF(rule, keyBox_.bottom()));
    paintDirections(painter, keyBox_.topLeft(), face, fonts_);
    const QPointF corner = keyBox_.topLeft() + QPointF(0, kDirections - 1.5);
    paintPage(painter, keyColumn_, corner);
    if (!more_.empty()) {
        fonts_.draw(painter, corner + QPointF(0, keyColumn_.back().box.bottom() + kTemplateText.leading()),
                    tr("more holes on the last sheet"), kTemplateText);
    }
    paintPage(painter, notesColumn_, keyBox_.bottomLeft() - QPointF(0, notesHeight()));
}

void LaidTemplate::paintMoreKey(QPainter& painter, const TemplateSheet& sheet) const {
    const std::size_t end =
        std::min(sheet.firstOfKey + static_cast<std::size_t>(columnsPerSheet()), moreColumns_.size());
    QPointF corner(0, keyBox_.top());
    for (std::size_t column = sheet.firstOfKey; column < end; ++column) {
        paintPage(painter, moreColumns_[column], corner);
        corner.rx() += kKeyWidth + kKeyGap;
    }
    if (keyColumn_.empty() && end == moreColumns_.size()) {
        paintPage(painter, notesColumn_, keyBox_.topLeft());
    }
}

void LaidTemplate::paint(QPainter& painter, int index) const {
    const TemplateSheet& sheet = sheets_[static_cast<std::size_t>(index)];
    frame_.paint(painter, title(index));
    if (sheet.column >= 0) {
        paintTile(painter, sheet);
        paintKey(painter, sheet.face);
    } else {
        paintMoreKey(painter, sheet);
    }
    paintFoot(painter);
}

}  // namespace

DrillingTemplate::DrillingTemplate(const TemplateRequest& request, const QPageLayout& page)
    : PrintedSheets(std::make_unique<const LaidTemplate>(request, page)) {}

}  // namespace bolthole
