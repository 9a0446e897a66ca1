#include "widgets/curves/travel_curves.h"

#include <QFocusEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <functional>

#include "widgets/curves/curve_card.h"
#include "widgets/kit/theme.h"
#include "widgets/words/sure_words.h"

namespace bolthole {

namespace {

constexpr int kWideGap = 8;  // between cards
constexpr int kNarrowGap = 5;
constexpr int kNarrow = 640;  // px; a widget narrower than this
constexpr int kSidePad = 8;   // between card and plot
const QString kCurveLayer = QStringLiteral("main");

/// Paints on the plot's layer, under the graphs, by calling back.
class PaintLayer : public QCPLayerable {
  public:
    PaintLayer(QCustomPlot* plot, std::function<void(QPainter&)> paint)
        : QCPLayerable(plot, kCurveLayer), paint_(std::move(paint)) {}

  protected:
    // QCPPainter's own antialiasing shifts everything by half a pixel; the cards set plain render hints.
    void applyDefaultAntialiasingHint(QCPPainter* painter) const override { painter->setAntialiasing(false); }
    void draw(QCPPainter* painter) override {
        painter->setRenderHint(QPainter::Antialiasing);
        paint_(*painter);
    }

  private:
    std::function<void(QPainter&)> paint_;
};

/// A plot with a last layer that is painted straight onto the widget: it changes with every step of the
/// cursor and needs neither a buffer of its own nor the blending of one.
class CursorPlot : public QCustomPlot {
  public:
    CursorPlot(QWidget* parent, std::function<void(QPainter&)> paintCursor)
        : QCustomPlot(parent), paintCursor_(std::move(paintCursor)) {}

  protected:
    void paintEvent(QPaintEvent* event) override {
        QCustomPlot::paintEvent(event);
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        paintCursor_(painter);
    }

  private:
    std::function<void(QPainter&)> paintCursor_;
};

}  // namespace

TravelCurves::TravelCurves(QWidget* parent)
    : QWidget(parent),
      plot_(new CursorPlot(this, [this](QPainter& painter) { paintCursor(painter); })),
      type_(std::make_unique<CardType>()) {
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::SizeVerCursor);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(tr("Travel curves"));
    setStatusTip(tr("Drag to move the axle; Up, Down, Page Up, Page Down, Home, End; R for ride height"));
    setWhatsThis(tr(
        "Each curve shows one figure through the travel, full bump at the top. In the band around it 95 of "
        "100 cars lie that are measured like this one. Drag up or down anywhere to "
        "move the axle. Up and Down: one step; Page Up and Page Down: ten; Home: full bump; End: full "
        "droop; R or a double click: ride height."));
    buildPlot();
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &TravelCurves::dress);
    dress();
}

TravelCurves::~TravelCurves() = default;

void TravelCurves::buildPlot() {
    plot_->setAttribute(Qt::WA_TransparentForMouseEvents);
    plot_->setFocusPolicy(Qt::NoFocus);
    plot_->setPlottingHint(QCP::phImmediateRefresh, false);
    plot_->setPlottingHint(QCP::phFastPolylines, true);
    plot_->plotLayout()->clear();
    plot_->plotLayout()->setAutoMargins(QCP::msNone);
    plot_->plotLayout()->setMargins(QMargins());
    // One layer, one buffer: every further one costs a clearing and a blending of the whole plot in each
    // step.
    for (const char* unused : {"background", "grid", "axes", "legend", "overlay"}) {
        plot_->removeLayer(plot_->layer(QString::fromLatin1(unused)));
    }
    plot_->layer(kCurveLayer)->setMode(QCPLayer::lmBuffered);
    new PaintLayer(plot_, [this](QPainter& painter) {
        paintFaces(painter);
        paintBands(painter);
    });
    const std::vector<CurveCardSpec>& specs = curveCardSpecs();
    for (std::size_t i = 0; i < specs.size(); ++i) {
        auto* axisRect = new QCPAxisRect(plot_, true);
        axisRect->setAutoMargins(QCP::msNone);
        axisRect->setMinimumSize(10, 10);
        plot_->plotLayout()->addElement(0, static_cast<int>(i), axisRect);
        cards_.push_back(std::make_unique<CurveCard>(specs[i], *plot_, *axisRect));
    }
    connect(plot_, &QCustomPlot::afterLayout, this, &TravelCurves::placeCards);
}

void TravelCurves::dress() {
    const bool withBefore = type_->withBefore;
    *type_ = CardType();
    type_->withBefore = withBefore;
    plot_->setBackground(QBrush(theme().window));
    for (const auto& card : cards_) {
        card->dress(!current_);
        card->forgetFace();
    }
    layOut();
    updateGeometry();
}

void TravelCurves::layOut() {
    for (const auto& card : cards_) {
        card->axisRect().setMargins(QMargins(kSidePad, type_->header(), kSidePad, type_->footer()));
    }
    if (!rect().isEmpty()) {  // squeezed to nothing there is no picture to paint into
        plot_->setGeometry(rect());
    }
    plot_->replot(QCustomPlot::rpQueuedRefresh);
    if (announced_ != plotArea()) {
        announced_ = plotArea();
        emit plotAreaChanged(announced_);
    }
}

QRect TravelCurves::plotArea() const {
    return rect().adjusted(kSidePad, type_->header(), -kSidePad, -type_->footer());
}

TravelOnScreen TravelCurves::onScreen() const {
    const QRect at = plotArea();
    return {span_, static_cast<double>(at.top()), static_cast<double>(at.top() + at.height())};
}

// The plot's own grid rounds every column up and so runs out of the widget; the cards are put to whole pixels
// here, right after it.
void TravelCurves::placeCards() {
    const int gap = width() < kNarrow ? kNarrowGap : kWideGap;
    const int count = static_cast<int>(cards_.size());
    const int room = width() - gap * (count - 1);
    for (int i = 0; i < count; ++i) {
        const int left = room * i / count + gap * i;
        const int right = room * (i + 1) / count + gap * i;
        CurveCard& card = *cards_[static_cast<std::size_t>(i)];
        card.axisRect().setOuterRect(QRect(left, 0, right - left, height()));
        card.place(*type_);
    }
    takeTravelTicks();
}

void TravelCurves::takeTravelTicks() {
    travelTicks_ = travelTicks(onScreen(), units_, travelTickSpacing(type_->quietMetrics.height()));
}

QSize TravelCurves::sizeHint() const {
    return {560, 380};
}

QSize TravelCurves::minimumSizeHint() const {
    const int card = static_cast<int>(type_->quietMetrics.height() * 5.5);
    return {5 * card + 4 * kNarrowGap, type_->header() + type_->footer() + 80};
}

void TravelCurves::showTrace(const BenchState& state) {
    if (type_->withBefore != state.before.has_value()) {
        type_->withBefore = state.before.has_value();
        layOut();
        updateGeometry();
    }
    span_ = travelSpan(state);
    units_ = state.style.units;
    hasCurve_ = state.trace.ride.usable && !state.trace.stations.empty();
    current_ = state.traceIsCurrent;
    problem_ = QString::fromStdString(state.problem);
    const GhostTraces ghosts{.before = state.before ? &state.before->trace : nullptr,
                             .pointed = state.pointed ? &state.pointed->trace : nullptr};
    const TraceSpread* spread = state.showsSure ? &state.spread : nullptr;
    for (const auto& card : cards_) {
        card->takeSpread(state.trace, spread);
        card->showTrace(state.trace, ghosts, span_, units_, !current_);
    }
    takeCursor(state);
    for (const auto& card : cards_) {
        if (card->takeFaceChange()) {
            card->place(*type_);
        }
    }
    takeTravelTicks();
    plot_->layer(kCurveLayer)->replot();  // the layout stays, and with it most of the work
}

void TravelCurves::showCursor(const BenchState& state) {
    takeCursor(state);
    plot_->update();
}

void TravelCurves::takeCursor(const BenchState& state) {
    travel_ = state.cursorTravel;
    reachable_ = state.cursor.usable;
    for (const auto& card : cards_) {
        card->showCursor(state.cursor, state.before ? &state.before->cursor : nullptr);
        const std::vector<CurveLine>& lines = card->spec().lines;
        for (std::size_t line = 0; line < lines.size(); ++line) {
            card->showSure(line, cursorSureWords(state, lines[line].figure));
        }
    }
    describeInWords();
}

void TravelCurves::describeInWords() {
    if (!hasCurve_) {
        setAccessibleDescription(problem_.isEmpty() ? tr("No curve: the car can't be assembled")
                                                    : tr("No curve: %1").arg(problem_));
        return;
    }
    QStringList parts;
    for (const auto& card : cards_) {
        parts << card->spokenValues();
    }
    const QString values = parts.isEmpty() ? tr("out of reach") : parts.join(QStringLiteral(", "));
    const QString words = tr("At %1: %2").arg(travelInWords(travel_, units_), values);
    setAccessibleDescription(current_ ? words : tr("Last curve that worked. %1").arg(words));
}

void TravelCurves::paintFaces(QPainter& painter) {
    for (const auto& card : cards_) {
        card->paintFace(painter, *type_, travelTicks_, ring_);
    }
}

void TravelCurves::paintBands(QPainter& painter) const {
    for (const auto& card : cards_) {
        card->paintBands(painter);
    }
}

void TravelCurves::paintCursor(QPainter& painter) const {
    if (hasCurve_) {
        QPen dots(reachable_ ? theme().ink : theme().muted, 1.2);
        dots.setDashPattern({1.2, 2.6});
        dots.setCapStyle(Qt::FlatCap);
        painter.setPen(dots);
        const double y = std::floor(onScreen().position(travel_)) + 0.5;
        painter.drawLine(QPointF(0, y), QPointF(width(), y));
        for (const auto& card : cards_) {
            card->paintCursor(painter, *type_);
        }
    }
    paintMessage(painter);
}

void TravelCurves::paintMessage(QPainter& painter) const {
    if (hasCurve_ && current_) {
        return;
    }
    QString words = hasCurve_ ? tr("Last curve that worked") : tr("No curve: the car can't be assembled");
    if (!problem_.isEmpty()) {
        words = hasCurve_ ? words + QStringLiteral(". ") + problem_ : tr("No curve: %1").arg(problem_);
    }
    // Below the middle, clear of the stretches out of reach at the ends and of the cursor at ride.
    const QRectF plots = QRectF(plotArea());
    const QRectF room = plots.adjusted(10, hasCurve_ ? 0.62 * plots.height() : 0, -10, -10);
    const int flags = Qt::TextWordWrap | Qt::AlignHCenter | (hasCurve_ ? Qt::AlignTop : Qt::AlignVCenter);
    painter.setFont(type_->quiet);
    const QRectF box = painter.boundingRect(room, flags, words).adjusted(-10, -6, 10, 6);
    painter.setPen(QPen(theme().problem, 1));
    painter.setBrush(theme().card);
    painter.drawRoundedRect(box, 5, 5);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(theme().ink);
    painter.drawText(room, flags, words);
}

void TravelCurves::ask(double travel) {
    const double within = span_.clamp(travel);
    if (hasCurve_ && within != travel_) {
        emit cursorMoved(within);
    }
}

void TravelCurves::resizeEvent(QResizeEvent*) {
    layOut();
}

void TravelCurves::showEvent(QShowEvent*) {
    layOut();
}

void TravelCurves::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) {
        event->ignore();
        return;
    }
    ask(onScreen().travelAt(event->position().y()));
}

void TravelCurves::mouseMoveEvent(QMouseEvent* event) {
    if ((event->buttons() & Qt::LeftButton) != 0) {
        ask(onScreen().travelAt(event->position().y()));
    }
}

void TravelCurves::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        ask(0.0);
    }
}

void TravelCurves::keyPressEvent(QKeyEvent* event) {
    const bool plain = (event->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
    const std::optional<double> travel = plain ? travelAfterKey(event->key(), travel_, span_) : std::nullopt;
    if (!travel) {
        QWidget::keyPressEvent(event);
        return;
    }
    setRing(true);
    ask(*travel);
}

// The ring is for the keyboard: neither a click that drags the cursor nor the window's own activation raises
// it.
void TravelCurves::focusInEvent(QFocusEvent* event) {
    setRing(event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason ||
            event->reason() == Qt::ShortcutFocusReason);
}

void TravelCurves::focusOutEvent(QFocusEvent*) {
    setRing(false);
}

void TravelCurves::setRing(bool shown) {
    if (ring_ != shown) {
        ring_ = shown;
        plot_->replot(QCustomPlot::rpQueuedRefresh);
    }
}

}  // namespace bolthole
