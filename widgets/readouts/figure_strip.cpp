#include "widgets/readouts/figure_strip.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QPainter>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "widgets/kit/kept_words.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/figure_words.h"
#include "widgets/words/starting_words.h"
#include "widgets/words/uncertainty_words.h"

namespace bolthole {

namespace {

constexpr int kBetween = 18;  // px between two figures
constexpr int kSides = 28;    // left and right of them

}  // namespace

/// A line of which shorter wordings are shown where it has no room, cut with an ellipsis only where even the
/// shortest has none; its text and tool tip have all of it.
class FigureNote : public ToneLabel {
  public:
    explicit FigureNote(QWidget* parent) : ToneLabel(Tone::muted, {}, parent) {}

    /// Longest first.
    void showWordings(const QStringList& wordings) {
        if (wordings != wordings_) {
            wordings_ = wordings;
            setText(wordings.constFirst());
            choose();
        }
    }

    [[nodiscard]] const QString& shown() const { return shown_; }

  protected:
    void resizeEvent(QResizeEvent* event) override {
        ToneLabel::resizeEvent(event);
        choose();
    }
    void changeEvent(QEvent* event) override {
        ToneLabel::changeEvent(event);
        if (event->type() == QEvent::FontChange) {
            choose();
        }
    }
    void paintEvent(QPaintEvent* event) override {
        if (wordWrap() || shown_ == text()) {
            ToneLabel::paintEvent(event);
            return;
        }
        QPainter painter(this);
        painter.setPen(palette().color(QPalette::WindowText));
        painter.drawText(contentsRect(), Qt::AlignLeft | Qt::AlignVCenter, shown_);
    }

  private:
    void choose() {
        const int room = contentsRect().width();
        shown_.clear();
        for (const QString& words : wordings_) {
            if (fontMetrics().horizontalAdvance(words) <= room) {
                shown_ = words;
                break;
            }
        }
        if (shown_.isEmpty() && !wordings_.isEmpty()) {
            shown_ = fontMetrics().elidedText(wordings_.constLast(), Qt::ElideRight, room);
        }
        update();
    }

    QStringList wordings_;
    QString shown_;
};

namespace {

QString figure(double value, Quantity quantity, Units units) {
    return QString::fromStdString(figureText(value, quantity, units));
}

void setChanged(QLabel* label, const QString& text) {
    if (label->text() != text) {
        label->setText(text);
    }
}

int neededWidth(const QLabel* label, const QString& text) {
    return static_cast<int>(std::ceil(widthOfLine(label->font(), text))) + 1;
}

// A line under a figure widens for longer words and stays so: a label whose width is not fixed lays out the
// window with each text.
void setChangedUnder(QLabel* label, const QString& text) {
    label->setFixedWidth(std::max(label->minimumWidth(), neededWidth(label, text)));
    setChanged(label, text);
}

QString centerText(const Station& station, Units units) {
    if (std::isfinite(station[Figure::icX])) {
        return QStringLiteral("%1 × %2 %3")
            .arg(figure(station[Figure::icX], Quantity::length, units),
                 figure(station[Figure::icZ], Quantity::length, units), unitText(Quantity::length, units));
    }
    return station.usable ? FigureStrip::tr("at infinity") : QStringLiteral("\u2014");
}

// The values of the four cells, in their order.
std::array<QString, 4> cellTexts(const Station& station, Units units) {
    const auto angle = [&](Figure which) {
        const double value = station[which];
        return figure(value, Quantity::angle, units) +
               (std::isfinite(value) ? QStringLiteral("°") : QString());
    };
    return {figure(station[Figure::antiSquat], Quantity::percent, units) +
                (station.usable ? QStringLiteral(" %") : QString()),
            centerText(station, units), angle(Figure::swingArmAngle), angle(Figure::pinionToDriveshaft)};
}

QString whereText(const BenchState& state) {
    const double travel = state.cursorTravel;
    if (std::abs(travel) < 5e-5) {
        return FigureStrip::tr("at ride height");
    }
    return FigureStrip::tr("at %1 %2 of %3")
        .arg(figure(std::abs(travel), Quantity::length, state.style.units),
             unitText(Quantity::length, state.style.units),
             travel > 0 ? FigureStrip::tr("bump") : FigureStrip::tr("droop"));
}

// What stands under the figures, longest first: that they rest on starting numbers is never cut off.
QStringList noteWordings(const BenchState& state) {
    if (!state.problem.empty()) {
        return {FigureStrip::tr("No figures: %1").arg(QString::fromStdString(state.problem))};
    }
    if (!state.cursor.usable) {
        return {FigureStrip::tr("The links do not reach %1").arg(whereText(state).mid(3))};
    }
    const QString where = whereText(state);
    const QString whole =
        FigureStrip::tr("%1 · CG height %2").arg(where, cgHeightWords(state.solvedCar, state.style));
    const QString starts = startingWords(state.solvedCar);
    const QString dot = QStringLiteral(" · ");
    if (starts.isEmpty()) {
        const QString workedOut = workedOutWords(state.solvedCar);
        return workedOut.isEmpty() ? QStringList{whole, where}
                                   : QStringList{whole + dot + workedOut, where + dot + workedOut, workedOut};
    }
    const QString brief = FigureStrip::tr("rests on starting numbers");
    return {whole + dot + starts, whole + dot + brief, where + dot + brief, brief};
}

}  // namespace

FigureStrip::FigureStrip(QWidget* parent) : QWidget(parent), note_(new FigureNote(this)) {
    auto* row = new QHBoxLayout;
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(kBetween);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(14, 8, 14, 6);
    column->setSpacing(2);
    column->addLayout(row);
    column->addWidget(note_);
    const auto add = [&](const QString& title, const char* name, const QString& tip) {
        Cell cell = addCell(title, name, tip);
        auto* stack = new QVBoxLayout;
        stack->setSpacing(0);
        stack->addWidget(cell.title);
        stack->addWidget(cell.value);
        stack->addWidget(cell.plusMinus);
        stack->addWidget(cell.baseline);
        row->addLayout(stack);
        return cell;
    };
    antiSquat_ = add(
        tr("Anti-squat"), "antiSquatFigure",
        tr("Slope of the swing arm over CG height / wheelbase. Above 100 % axle and body separate under "
           "power, below the rear springs are pressed in. The body rises only above 100 (1 + wheel rate / "
           "tire rate) %."));
    instantCenter_ =
        add(tr("Instant center"), "instantCenterFigure",
            tr("Where the links' lines meet in side view: ahead of the rear contact patch × above the "
               "ground."));
    swingArm_ =
        add(tr("Swing arm"), "swingArmFigure",
            tr("Angle of the line from the rear contact patch to the instant center, against the ground."));
    pinion_ = add(tr("Pinion to driveshaft"), "pinionFigure",
                  tr("Pinion angle less driveshaft angle, in side view. Minus: the pinion's nose is low."));
    row->addStretch(1);
    note_->setObjectName(QStringLiteral("figureNote"));
    note_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    dress();
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &FigureStrip::dress);
}

QString FigureStrip::noteShown() const {
    return note_->shown();
}

FigureStrip::Cell FigureStrip::addCell(const QString& title, const char* objectName, const QString& tip) {
    const auto muted = [this](const QString& text) {
        return new ToneLabel(ToneLabel::Tone::muted, text, this);
    };
    Cell cell{muted(title), new QLabel(this), muted({}), muted({}), tip};
    cell.plusMinus->setObjectName(QLatin1String(objectName) + QStringLiteral("Uncertainty"));
    cell.plusMinus->setAccessibleName(tr("%1, ±").arg(title));
    cell.baseline->setObjectName(QLatin1String(objectName) + QStringLiteral("Baseline"));
    cell.baseline->setAccessibleName(tr("%1 before").arg(title));
    cell.baseline->hide();
    cell.value->setObjectName(QLatin1String(objectName));
    cell.value->setAccessibleName(title);
    cell.title->setToolTip(tip);
    cell.value->setToolTip(tip);
    return cell;
}

void FigureStrip::dress() {
    for (const Cell& cell : cells()) {
        cell.value->setFont(textFont(TextSize::figure, true));
    }
    note_->setFont(textFont(TextSize::small));
    // Fixed widths: a changing figure must not lay out the window anew in every step of a drag.
    const auto fix = [](const Cell& cell, const QString& widest) {
        const QFontMetrics metrics(cell.value->font());
        cell.value->setFixedSize(
            std::max(metrics.horizontalAdvance(widest),
                     QFontMetrics(cell.title->font()).horizontalAdvance(cell.title->text())) +
                4,
            metrics.height());
        for (QLabel* under : {cell.plusMinus, cell.baseline}) {
            under->setFixedSize(std::max(cell.value->width(), neededWidth(under, under->text())),
                                QFontMetrics(under->font()).height());
        }
    };
    fix(antiSquat_, QStringLiteral("\u2212000 %"));
    fix(instantCenter_, QStringLiteral("\u2212000.0 × 00.0 in"));
    fix(swingArm_, QStringLiteral("\u221200.0°"));
    fix(pinion_, QStringLiteral("\u221200.0°"));
    // Without the swing arm, which goes first; narrower, the others would run into each other.
    setMinimumWidth(kSides + 2 * kBetween + antiSquat_.value->width() + instantCenter_.value->width() +
                    pinion_.value->width());
}

// In a narrow window the swing arm goes first: its angle says the same as anti-squat.
void FigureStrip::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const bool room = width() >= kSides + 3 * kBetween + antiSquat_.value->width() +
                                     instantCenter_.value->width() + swingArm_.value->width() +
                                     pinion_.value->width();
    swingArm_.title->setVisible(room);
    swingArm_.value->setVisible(room);
    swingArm_.plusMinus->setVisible(room && !pinion_.plusMinus->isHidden());
    swingArm_.baseline->setVisible(room && !pinion_.baseline->isHidden());
}

void FigureStrip::showUncertainty(const BenchState& state) {
    constexpr std::array kFigures{Figure::antiSquat, Figure::icX, Figure::swingArmAngle,
                                  Figure::pinionToDriveshaft};
    for (std::size_t i = 0; i < kFigures.size(); ++i) {
        const Cell cell = cells()[i];
        setChangedUnder(cell.plusMinus, kFigures[i] == Figure::icX
                                            ? centerUncertaintyWords(state)
                                            : cursorUncertaintyWords(state, kFigures[i]));
        cell.plusMinus->setVisible(state.showsUncertainty && !cell.value->isHidden());
        const QString meaning = uncertaintyTip(state, kFigures[i]);
        const QString tip =
            meaning.isEmpty() ? cell.tip : wrappedToolTip(cell.tip + QLatin1Char(' ') + meaning);
        if (cell.value->toolTip() != tip) {
            for (QLabel* label : {cell.title, cell.value, cell.plusMinus}) {
                label->setToolTip(tip);
            }
        }
    }
}

void FigureStrip::showState(const BenchState& state) {
    const Station& station = state.cursor;
    const std::array<QString, 4> values = cellTexts(station, state.style.units);
    const std::array<QString, 4> baseline =
        state.baseline ? cellTexts(state.baseline->cursor, state.style.units) : std::array<QString, 4>{};
    for (std::size_t i = 0; i < values.size(); ++i) {
        const Cell cell = cells()[i];
        setChanged(cell.value, values[i]);
        setChangedUnder(cell.baseline, baseline[i].isEmpty() ? QString() : tr("before %1").arg(baseline[i]));
        cell.baseline->setVisible(state.baseline && !cell.value->isHidden());
    }
    showUncertainty(state);
    const bool isProblem = !state.problem.empty();
    note_->setTone(isProblem || !station.usable ? ToneLabel::Tone::problem : ToneLabel::Tone::muted);
    if (note_->wordWrap() != isProblem) {  // why there are no figures is never cut
        note_->setWordWrap(isProblem);
    }
    note_->showWordings(noteWordings(state));
    note_->setToolTip(note_->text());
}

}  // namespace bolthole
