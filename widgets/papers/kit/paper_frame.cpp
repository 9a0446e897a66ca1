#include "widgets/papers/kit/paper_frame.h"

#include <algorithm>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/kit/paper_marks.h"

namespace bolthole {

namespace {

constexpr double kAboveTitle = 1.4;
constexpr double kToSecondLine = 6.6;
constexpr double kSecondLine = 3.1;   // height of its digits
constexpr double kLeastTitle = 2.8;   // height of its digits, before it is cut short
constexpr double kBesideTitle = 6;    // white before what stands at the right end
constexpr double kBetweenRuns = 2.2;  // white after each part of the second line
constexpr double kBarRoom = 8;        // white before the scale bar
constexpr double kLeastBarFoot = 12;  // height of a foot with a scale bar

double barLength(const std::optional<Units>& units) {
    return !units ? 0 : *units == Units::inch ? 50.8 : 50.0;
}

}  // namespace

PaperFrame::PaperFrame(const PrintFonts& fonts, QSizeF page, const FrameStyle& style, const QString& starting,
                       const QString& caution)
    : fonts_(fonts),
      page_(page),
      style_(style),
      text_(kit_type::kText.scaled(style.factor)),
      lastLine_(style.title + kAboveTitle * style.factor + (style.hasSecondLine ? kToSecondLine : 0)),
      lastUnder_(lastLine_ + moreUnder() * text_.leading()),
      starting_(fonts.wrapped(starting, strong(), page.width())),
      caution_(fonts.wrapped(caution, text_,
                             page.width() - (style.scaleBar ? barLength(style.scaleBar) + kBarRoom : 0))) {
    const auto lines = [&](const QStringList& of) {
        return static_cast<double>(of.size()) * text_.leading();
    };
    const double rule = lastUnder_ + 1.2 * text_.digits + lines(starting_);
    const double foot = std::max(
        {lines(caution_) + 0.9 * text_.digits, style.leastFoot, style.scaleBar ? kLeastBarFoot : 0.0});
    body_ = QRectF(QPointF(0, rule), QPointF(page.width(), page.height() - foot));
}

// As much in one line as paintUnder() has room for uncut.
QStringList PaperFrame::underLines(const QString& words) const {
    return fonts_.wrapped(words, strong(), page_.width() - kBesideTitle - kBetweenRuns);
}

// How many lines the second line runs on to.
int PaperFrame::moreUnder() const {
    qsizetype lines = 1;
    for (const QString& words : style_.neverCut) {
        lines = std::max(lines, underLines(words).size());
    }
    return static_cast<int>(lines) - 1;
}

void PaperFrame::paint(QPainter& painter, const SheetTitle& title) const {
    drawRule(painter, kitPen(0.6), body_.top(), 0, page_.width());
    drawRule(painter, kitPen(0.3), body_.bottom(), 0, page_.width());
    painter.setPen(Qt::black);
    paintTitle(painter, title);
    fonts_.draw(painter, {0, lastUnder_ + text_.leading() + 0.2 * text_.digits}, starting_, strong());
    fonts_.draw(painter, {0, body_.bottom() + 1.75 * text_.digits}, caution_, text_);
    if (style_.scaleBar) {
        paintScaleBar(painter);
    }
}

void PaperFrame::paintTitle(QPainter& painter, const SheetTitle& title) const {
    const double right = page_.width() - title.clear;
    const double step = style_.hasSecondLine ? kToSecondLine : text_.leading();
    double besideTitle = 0;  // width that is taken at the right end
    double besideUnder = 0;
    for (std::size_t at = 0; at < title.asides.size(); ++at) {
        const std::size_t after = title.asides.size() - 1 - at;
        const PrintType type{text_.digits, title.asides[at].isBold};
        double& beside = style_.hasSecondLine && after == 0 ? besideUnder : besideTitle;
        beside = std::max(beside, fonts_.width(title.asides[at].text, type) + kBesideTitle);
        fonts_.draw(painter, {right, lastLine_ - static_cast<double>(after) * step}, title.asides[at].text,
                    type, Qt::AlignRight);
    }
    const double room = right - besideTitle;
    const PrintType type = fonts_.fitted(title.name + title.kind, {style_.title, true}, room, kLeastTitle);
    const QString name = fonts_.elided(title.name, type, room - fonts_.width(title.kind, type));
    fonts_.draw(painter, {0, style_.title + kAboveTitle * style_.factor}, name + title.kind, type);
    paintUnder(painter, title.under, right - besideUnder);
}

void PaperFrame::paintUnder(QPainter& painter, const std::vector<PaperRun>& runs, double room) const {
    if (lastUnder_ > lastLine_ && runs.size() == 1) {
        fonts_.draw(painter, {0, lastLine_}, underLines(runs[0].text), strong());
        return;
    }
    const auto width = [&](const PaperRun& run, double digits) {
        return fonts_.width(run.text, {digits, run.isBold}) + kBetweenRuns;
    };
    const auto all = [&](double digits) {
        double sum = 0;
        for (const PaperRun& run : runs) {
            sum += width(run, digits);
        }
        return sum;
    };
    double digits = kSecondLine;
    while (digits > text_.digits && all(digits) > room) {
        digits = std::max(digits - 0.1, text_.digits);
    }
    double bold = 0;
    for (const PaperRun& run : runs) {
        bold += run.isBold ? width(run, digits) : 0;
    }
    const double kept = bold > 0 ? std::min(1 - (all(digits) - room) / bold, 1.0) : 1;
    double x = 0;
    for (const PaperRun& run : runs) {
        const PrintType type{digits, run.isBold};
        const bool isCut = run.isBold && kept < 1;
        const QString shown =
            isCut ? fonts_.elided(run.text, type, kept * width(run, digits) - kBetweenRuns) : run.text;
        fonts_.draw(painter, {x, lastLine_}, shown, type);
        x += fonts_.width(shown, type) + kBetweenRuns;
    }
}

void PaperFrame::paintScaleBar(QPainter& painter) const {
    constexpr double kTick = 1.6;
    const double right = page_.width() - 0.3;
    const double left = right - barLength(style_.scaleBar);
    const double y = page_.height() - 2;
    drawRule(painter, kitPen(0.5), y, left, right);
    for (const double x : {left, (left + right) / 2, right}) {
        painter.drawLine(QPointF(x, y - kTick), QPointF(x, y + kTick));
    }
    painter.setPen(Qt::black);
    fonts_.draw(painter, {(left + right) / 2, y - 2 - text_.descent()},
                tr("scale bar 1:1, %1").arg(*style_.scaleBar == Units::inch ? tr("2 in") : tr("50 mm")),
                text_, Qt::AlignHCenter);
}

QString sheetWords(int index, int count) {
    return tr("sheet %1 of %2").arg(index + 1).arg(count);
}

SheetTitle titleOf(const std::string& carTitle, const QString& kind) {
    const QString name = QString::fromStdString(carTitle).simplified();
    return {name, name.isEmpty() ? capitalized(kind) : QStringLiteral(": ") + kind, {}, {}, 0};
}

}  // namespace bolthole
