#include "widgets/papers/drilling_template.h"

#include <QPainter>
#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/units/text.h"
#include "widgets/papers/printed_sheets.h"
#include "widgets/papers/template_drawing.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

constexpr PrintType kTemplateTitle{4.4, true};
constexpr PrintType kFace{3.0, true};
constexpr double kTemplateRule = 17;
constexpr double kFaceLine = 13;
constexpr double kStartingShare = 0.6;  // of the line, for what nobody measured
constexpr double kFootHeight = 24;
constexpr double kRulerStrip = 10;  // at the left, for the upright ruler
constexpr double kKeyWidth = 60;
constexpr double kKeyGap = 4;
constexpr double kDirections = 25;  // height
constexpr double kLeast = 20;       // mm; no tile is smaller, whatever page a printer offers
constexpr double kMark = 4;         // radius of an alignment mark's cross
constexpr std::array kPapers{ChartPaper::letter, ChartPaper::a4, ChartPaper::tabloid, ChartPaper::a3};
constexpr std::array kPaperNames{"letter", "A4", "tabloid", "A3"};

// Without a key the directions stand above the drawing.
QRectF drawingArea(QSizeF page, bool keyBeside) {
    const QPointF corner(kRulerStrip, kTemplateRule + 2 + (keyBeside ? 0 : kDirections));
    const double aside = keyBeside ? kKeyWidth + kKeyGap : 0;
    return {corner, QSizeF(std::max(page.width() - corner.x() - aside, kLeast),
                           std::max(page.height() - corner.y() - kFootHeight - 2, kLeast))};
}

int tilesFor(double length, double room) {
    const double overlap = std::min(kTemplateOverlap, room / 2);
    return length <= room ? 1 : static_cast<int>(std::ceil((length - overlap) / (room - overlap)));
}

double overlapOf(double room) {
    return std::min(kTemplateOverlap, room / 2);
}

// The content stands in the middle of its tiles.
TemplateTiles tilesOf(const QRectF& content, QSizeF page, bool keyBeside) {
    TemplateTiles tiles;
    tiles.keyBeside = keyBeside;
    tiles.area = drawingArea(page, keyBeside);
    const QSizeF room = tiles.area.size();
    tiles.across = tilesFor(content.width(), room.width());
    tiles.down = tilesFor(content.height(), room.height());
    const auto whole = [](int count, double each) { return count * each - (count - 1) * overlapOf(each); };
    const QPointF spare((whole(tiles.across, room.width()) - content.width()) / 2,
                        (whole(tiles.down, room.height()) - content.height()) / 2);
    tiles.origin = tiles.area.topLeft() + spare - content.topLeft();
    return tiles;
}

TemplateTiles tilesOf(const QRectF& content, QSizeF page) {
    const TemplateTiles beside = tilesOf(content, page, true);
    const TemplateTiles alone = tilesOf(content, page, false);
    return alone.count() < beside.count() ? alone : beside;
}

QPageLayout pageOf(ChartPaper paper, QPageLayout::Orientation orientation) {
    QPageLayout page = pageLayoutOf(paper);
    page.setOrientation(orientation);
    page.setMargins(QMarginsF(kPaperMargin, kPaperMargin, kPaperMargin, kPaperMargin));
    return page;
}

int tileCount(const TemplateRequest& request, const QPageLayout& page) {
    return tilesOf(templateScene(request, TemplateFace::left).content, paintable(page)).count();
}

/// One sheet: a tile of a face, or more of the key.
struct TemplateSheet {
    TemplateFace face = TemplateFace::left;
    int column = -1;  // -1: key only
    int row = 0;
    std::size_t firstEntry = 0;  // of the key
    std::size_t entries = 0;
};

}  // namespace

QPointF TemplateTiles::originOf(int column, int row) const {
    return origin - QPointF(column * (area.width() - overlapOf(area.width())),
                            row * (area.height() - overlapOf(area.height())));
}

QPageLayout templatePageOf(ChartPaper paper, const TemplateRequest& request) {
    const QPageLayout upright = pageOf(paper, QPageLayout::Portrait);
    const QPageLayout across = pageOf(paper, QPageLayout::Landscape);
    return tileCount(request, across) <= tileCount(request, upright) ? across : upright;
}

QString templateRefusal(const TemplateRequest& request, const QPageLayout& page) {
    const QRectF content = templateScene(request, TemplateFace::left).content;
    const int count = tilesOf(content, paintable(page)).count();
    if (count <= kMostTemplateTiles) {
        return {};
    }
    const QString size = QStringLiteral(
                             "At true size the drawing of this bracket is %1 by %2, %3 sheets of "
                             "this paper for each face; a template is made for %4 at most. ")
                             .arg(templateLength(content.width() * kMetresPerMillimetre, request.style),
                                  templateLength(content.height() * kMetresPerMillimetre, request.style))
                             .arg(count)
                             .arg(kMostTemplateTiles);
    for (std::size_t paper = 0; paper < kPapers.size(); ++paper) {
        if (tileCount(request, templatePageOf(kPapers[paper], request)) <= kMostTemplateTiles) {
            return size + QStringLiteral("It needs %1 paper.").arg(QLatin1String(kPaperNames[paper]));
        }
    }
    return size + QStringLiteral("No paper is large enough: check its corners and holes.");
}

struct DrillingTemplate::Parts {
    Parts(const TemplateRequest& asked, const QPageLayout& layout)
        : request(asked),
          left(templateScene(asked, TemplateFace::left)),
          right(templateScene(asked, TemplateFace::right)),
          page(paintable(layout)),
          keyBox(QPointF(page.width() - kKeyWidth, kTemplateRule + 3),
                 QPointF(page.width(), page.height() - kFootHeight - 2)) {
        breakKey();
        layOut();
    }
    Parts(const Parts&) = delete;

    [[nodiscard]] const TemplateScene& scene(TemplateFace face) const {
        return face == TemplateFace::left ? left : right;
    }
    void breakKey();
    void layOut();
    [[nodiscard]] std::size_t entriesIn(double height, std::size_t first) const;
    /// From the first baseline of the notes to the last, mm, with a little below.
    [[nodiscard]] double notesHeight() const {
        return static_cast<double>(notes.size() - 2) * kTemplateText.leading() + 1;
    }
    [[nodiscard]] double heightOf(const QStringList& entry) const;
    [[nodiscard]] QString partWords(const TemplateSheet& sheet) const;
    void paintTitle(QPainter& painter, const TemplateSheet& sheet, int index) const;
    void paintFoot(QPainter& painter) const;
    void paintTile(QPainter& painter, const TemplateSheet& sheet) const;
    void paintMarks(QPainter& painter, const TemplateTiles& tiles, const TemplateSheet& sheet) const;
    void paintMark(QPainter& painter, QPointF at, const QString& name) const;
    void paintKey(QPainter& painter, const TemplateSheet& sheet) const;
    void paintMoreKey(QPainter& painter, const TemplateSheet& sheet) const;
    double paintEntries(QPainter& painter, QPointF at, std::size_t first, std::size_t count) const;

    TemplateRequest request;
    TemplateScene left;
    TemplateScene right;
    PrintFonts fonts;
    QSizeF page;
    QRectF keyBox;
    std::vector<QStringList> key;  // wrapped; the first line of each stands out
    QStringList notes;             // wrapped, an empty line between them
    std::vector<TemplateSheet> sheets;
};

void DrillingTemplate::Parts::breakKey() {
    for (const TemplateHole& hole : left.holes) {
        QStringList lines = fonts.wrapped(hole.keyLines.constFirst(), kTemplateStrong, kKeyWidth);
        const QString head = lines.join(QLatin1Char('\n'));
        lines = {head};
        for (const QString& said : hole.keyLines.mid(1)) {
            lines << fonts.wrapped(said, kTemplateText, kKeyWidth - 4);
        }
        key.push_back(lines);
    }
    for (const QString& note : left.notes) {
        notes << fonts.wrapped(note, kTemplateText, kKeyWidth) << QString();
    }
}

double DrillingTemplate::Parts::heightOf(const QStringList& entry) const {
    const auto heads = static_cast<double>(entry.constFirst().count(QLatin1Char('\n')) + 1);
    return (heads + static_cast<double>(entry.size()) - 1) * kTemplateText.leading() + 1.6;
}

/// How many entries from `first` on stand in a column of `height`; one at least.
std::size_t DrillingTemplate::Parts::entriesIn(double height, std::size_t first) const {
    std::size_t count = 0;
    double used = 0;
    while (first + count < key.size() && (count == 0 || used + heightOf(key[first + count]) <= height)) {
        used += heightOf(key[first + count++]);
    }
    return count;
}

void DrillingTemplate::Parts::layOut() {
    const double room =
        keyBox.height() - kDirections - static_cast<double>(notes.size() + 2) * kTemplateText.leading();
    const bool hasKey = tilesOf(left.content, page).keyBeside;
    const std::size_t beside = hasKey ? entriesIn(room, 0) : 0;
    for (const TemplateFace face : {TemplateFace::left, TemplateFace::right}) {
        const TemplateTiles tiles = tilesOf(scene(face).content, page);
        for (int row = 0; row < tiles.down; ++row) {
            for (int column = 0; column < tiles.across; ++column) {
                sheets.push_back({face, column, row, 0, beside});
            }
        }
    }
    const int notesColumn = hasKey ? 0 : 1;
    const int columns =
        std::max(1, static_cast<int>((page.width() + kKeyGap) / (kKeyWidth + kKeyGap)) - notesColumn);
    for (std::size_t first = beside; first < key.size();) {
        TemplateSheet more{TemplateFace::left, -1, 0, first, 0};
        for (int column = 0; column < columns; ++column) {
            more.entries += entriesIn(keyBox.height(), first + more.entries);
        }
        first += more.entries;
        sheets.push_back(more);
    }
}

QString DrillingTemplate::Parts::partWords(const TemplateSheet& sheet) const {
    if (sheet.column < 0) {
        return sheet.firstEntry == 0 ? QStringLiteral("the holes") : QStringLiteral("the holes, continued");
    }
    const TemplateTiles tiles = tilesOf(scene(sheet.face).content, page);
    return tiles.count() == 1 ? QString()
                              : QStringLiteral("column %1 of %2, row %3 of %4")
                                    .arg(sheet.column + 1)
                                    .arg(tiles.across)
                                    .arg(sheet.row + 1)
                                    .arg(tiles.down);
}

void DrillingTemplate::Parts::paintTitle(QPainter& painter, const TemplateSheet& sheet, int index) const {
    const QString part = partWords(sheet);
    const QString number = QStringLiteral("sheet %1 of %2").arg(index + 1).arg(sheets.size()) +
                           (part.isEmpty() ? QString() : QStringLiteral(": ") + part);
    const double aside = fonts.width(number, kTemplateText) + 6;
    const double end = page.width();
    painter.setPen(Qt::black);
    fonts.draw(painter, {end, 6}, number, kTemplateText, Qt::AlignRight);
    const QString what = left.bracketWords.simplified() + QStringLiteral(": drilling template, 1:1");
    const double room = end - aside;
    PrintType title = kTemplateTitle;
    while (title.digits > 3.2 && fonts.width(what, title) > room) {
        title.digits -= 0.2;
    }
    fonts.draw(painter, {0, 6}, fonts.elided(what, title, room), title);
    const QString face =
        sheet.column < 0 ? QStringLiteral("The holes, by their numbers") : scene(sheet.face).faceWords;
    const QString starting =
        fonts.elided(startingHeading(request.car), kTemplateStrong, kStartingShare * end);
    const double faceRoom = starting.isEmpty() ? end : end - fonts.width(starting, kTemplateStrong) - 4;
    PrintType type = kFace;
    while (type.digits > 2.5 && fonts.width(face, type) > faceRoom) {
        type.digits -= 0.1;
    }
    fonts.draw(painter, {0, kFaceLine}, fonts.elided(face, type, faceRoom), type);
    fonts.draw(painter, {end, kFaceLine}, starting, kTemplateStrong, Qt::AlignRight);
    painter.setPen(QPen(Qt::black, 0.6, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(0, kTemplateRule), QPointF(end, kTemplateRule));
}

void DrillingTemplate::Parts::paintFoot(QPainter& painter) const {
    const double top = page.height() - kFootHeight;
    painter.setPen(QPen(Qt::black, 0.3, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(0, top), QPointF(page.width(), top));
    paintMetricRuler(painter, {3, page.height() - 3}, fonts);
    const double x = kMetricRuler + 16;
    const QStringList caution =
        fonts.wrapped(QString::fromUtf8(kTemplateCaution), kTemplateStrong, page.width() - x);
    const QStringList how =
        fonts.wrapped(QStringLiteral("Print at 100 %, never fitted to the page. One ruler tells the width, "
                                     "the other the height."),
                      kTemplateText, page.width() - x);
    painter.setPen(Qt::black);
    const double first = top + 4.6;
    fonts.draw(painter, {x, first}, caution, kTemplateStrong);
    const double second = first + static_cast<double>(caution.size()) * kTemplateText.leading();
    fonts.draw(painter, {x, second}, how, kTemplateText);
    const QString car = QString::fromStdString(request.car.title).simplified();
    fonts.draw(painter, {page.width(), page.height() - 1}, fonts.elided(car, kTemplateText, page.width() - x),
               kTemplateText, Qt::AlignRight);
}

void DrillingTemplate::Parts::paintMark(QPainter& painter, QPointF at, const QString& name) const {
    painter.setPen(QPen(Qt::black, kThinnestLine, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(at - QPointF(kMark, 0), at + QPointF(kMark, 0));
    painter.drawLine(at - QPointF(0, kMark), at + QPointF(0, kMark));
    painter.drawRect(QRectF(at - QPointF(1.5, 1.5), QSizeF(3, 3)));
    painter.setPen(Qt::black);
    fonts.draw(painter, at + QPointF(2.2, -1.2), name, {2.0, false});
}

// Two marks on each seam, in the middle of the strip both sheets show; both sheets name them alike.
void DrillingTemplate::Parts::paintMarks(QPainter& painter, const TemplateTiles& tiles,
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

void DrillingTemplate::Parts::paintTile(QPainter& painter, const TemplateSheet& sheet) const {
    const TemplateScene& shown = scene(sheet.face);
    const TemplateTiles tiles = tilesOf(shown.content, page);
    painter.save();
    painter.setClipRect(tiles.area);
    painter.translate(tiles.originOf(sheet.column, sheet.row));
    TemplateDrawing(painter, shown, fonts).paint();
    painter.restore();
    if (tiles.count() > 1) {
        paintMarks(painter, tiles, sheet);
    }
    const double ruler = std::min(page.height() - kFootHeight - 4, tiles.area.top() + kInchRuler + 6);
    paintInchRuler(painter, {1, ruler}, fonts);
}

double DrillingTemplate::Parts::paintEntries(QPainter& painter, QPointF at, std::size_t first,
                                             std::size_t count) const {
    painter.setPen(Qt::black);
    for (std::size_t entry = first; entry < first + count; ++entry) {
        const QStringList heads = key[entry].constFirst().split(QLatin1Char('\n'));
        fonts.draw(painter, at, heads, kTemplateStrong);
        at.ry() += static_cast<double>(heads.size()) * kTemplateText.leading();
        fonts.draw(painter, at + QPointF(4, 0), key[entry].mid(1), kTemplateText);
        at.ry() += static_cast<double>(key[entry].size() - 1) * kTemplateText.leading() + 1.6;
    }
    return at.y();
}

void DrillingTemplate::Parts::paintKey(QPainter& painter, const TemplateSheet& sheet) const {
    if (sheet.entries == 0) {
        paintDirections(painter, {kRulerStrip + 2, keyBox.top()}, sheet.face, fonts);
        fonts.draw(
            painter, {kRulerStrip + 56, keyBox.top() + 12},
            fonts.wrapped(QStringLiteral("The holes by their numbers, and what has to be known of this "
                                         "sheet: on the last one."),
                          kTemplateText, page.width() - kRulerStrip - 58),
            kTemplateText);
        return;
    }
    painter.setPen(QPen(Qt::black, kThinnestLine, Qt::SolidLine, Qt::FlatCap));
    const double rule = keyBox.left() - kKeyGap / 2;
    painter.drawLine(QPointF(rule, keyBox.top() - 1), QPointF(rule, keyBox.bottom()));
    paintDirections(painter, keyBox.topLeft(), sheet.face, fonts);
    double y = keyBox.top() + kDirections + 2;
    y = paintEntries(painter, {keyBox.left(), y}, sheet.firstEntry, sheet.entries);
    if (sheet.entries < key.size()) {
        fonts.draw(painter, {keyBox.left(), y}, QStringLiteral("more holes on the last sheet"),
                   kTemplateText);
    }
    fonts.draw(painter, {keyBox.left(), keyBox.bottom() - notesHeight()}, notes, kTemplateText);
}

void DrillingTemplate::Parts::paintMoreKey(QPainter& painter, const TemplateSheet& sheet) const {
    std::size_t first = sheet.firstEntry;
    const std::size_t end = sheet.firstEntry + sheet.entries;
    for (double x = 0; first < end; x += kKeyWidth + kKeyGap) {
        const std::size_t count = std::min(entriesIn(keyBox.height(), first), end - first);
        paintEntries(painter, {x, keyBox.top() + kTemplateText.digits}, first, count);
        first += count;
    }
    if (!tilesOf(left.content, page).keyBeside && end == key.size()) {
        const double aside = page.width() - kKeyWidth;
        fonts.draw(painter, {aside, keyBox.top() + kTemplateText.digits}, notes, kTemplateText);
    }
}

DrillingTemplate::DrillingTemplate(const TemplateRequest& request, const QPageLayout& page)
    : parts_(std::make_unique<Parts>(request, page)) {}

DrillingTemplate::~DrillingTemplate() = default;
DrillingTemplate::DrillingTemplate(DrillingTemplate&&) noexcept = default;

int DrillingTemplate::sheetCount() const {
    return static_cast<int>(parts_->sheets.size());
}

void DrillingTemplate::paintSheet(QPainter& painter, int index) const {
    const TemplateSheet& sheet = parts_->sheets[static_cast<std::size_t>(index)];
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    parts_->paintTitle(painter, sheet, index);
    if (sheet.column >= 0) {
        parts_->paintTile(painter, sheet);
        parts_->paintKey(painter, sheet);
    } else {
        parts_->paintMoreKey(painter, sheet);
    }
    parts_->paintFoot(painter);
    painter.restore();
}

}  // namespace bolthole
