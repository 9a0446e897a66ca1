#include "widgets/pages/launch/shock_dialog.h"

#include <QDialogButtonBox>
#include <QGridLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "geometry/units/text.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr qsizetype kToldLines = 6;

QString withMark(double value, Quantity quantity, Units units) {
    return QString::fromStdString(withUnit(figureText(value, quantity, units), quantity, units));
}

}  // namespace

ShockDialog::ShockDialog(const QString& whose, const std::optional<Damping>& now,
                         const std::optional<Damping>& estimate, Units units, QWidget* parent)
    : QDialog(parent),
      units_(units),
      now_(now),
      estimate_(estimate),
      source_(new CalmCombo(this)),
      words_(new ToneLabel(ToneLabel::Tone::muted, {}, this)),
      texts_(new QWidget(this)),
      good_(new ToneLabel(ToneLabel::Tone::muted, {}, this)),
      bad_(new ToneLabel(ToneLabel::Tone::problem, {}, this)) {
    setObjectName(QStringLiteral("shockDialog"));
    setWindowTitle(tr("Forces of %1").arg(whose));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(18, 16, 18, 14);
    column->setSpacing(10);
    source_->addItems({tr("a shock dyno's sheet"), tr("a hung weight and a stopwatch"),
                       tr("an estimate: no shock was measured")});
    source_->setAccessibleName(tr("Where the forces come from"));
    column->addWidget(new BoxRow(tr("From"), source_, this));
    words_->setWordWrap(true);
    words_->setMinimumWidth(560);
    column->addWidget(words_);
    auto* grid = new QGridLayout(texts_);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(14);
    bump_ = addText(tr("Bump: the shock gets shorter"));
    rebound_ = addText(tr("Rebound: the shock gets longer"));
    column->addWidget(texts_, 1);
    for (ToneLabel* label : {good_, bad_}) {
        label->setWordWrap(true);
        column->addWidget(label);
    }
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    take_ = buttons->addButton(tr("Take them"), QDialogButtonBox::AcceptRole);
    if (now) {
        auto* clear = buttons->addButton(tr("Take away"), QDialogButtonBox::DestructiveRole);
        clear->setToolTip(tr("The launch then runs without this shock"));
        connect(clear, &QPushButton::clicked, this, [this] {
            damping_.reset();
            accept();
        });
    }
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    connect(source_, &QComboBox::currentIndexChanged, this, &ShockDialog::showSource);
    for (QPlainTextEdit* text : {bump_, rebound_}) {
        connect(text, &QPlainTextEdit::textChanged, this, &ShockDialog::refresh);
    }
    showSource();
}

QPlainTextEdit* ShockDialog::addText(const QString& name) {
    auto* grid = qobject_cast<QGridLayout*>(texts_->layout());
    const int column = grid->count() / 2;
    auto* text = new QPlainTextEdit(texts_);
    text->setAccessibleName(name);
    text->setTabChangesFocus(true);
    text->setMinimumSize(270, 200);
    auto* label = new ToneLabel(ToneLabel::Tone::heading, name, texts_);
    label->setBuddy(text);
    grid->addWidget(label, 0, column);
    grid->addWidget(text, 1, column);
    return text;
}

void ShockDialog::choose(Source source) {
    source_->setCurrentIndex(static_cast<int>(source));
}

void ShockDialog::showSource() {
    const auto source = static_cast<Source>(source_->currentIndex());
    const bool isInch = units_ == Units::inch;
    texts_->setVisible(source != Source::estimate);
    const QSignalBlocker bumpBlocker(bump_);
    const QSignalBlocker reboundBlocker(rebound_);
    bump_->clear();
    rebound_->clear();
    switch (source) {
        case Source::sheet:
            words_->showText(
                tr("Rows of shaft speed and force, a column a click; the first row names the clicks. "
                   "Speeds in %1, forces in %2, both of one shock at its own shaft.")
                    .arg(isInch ? tr("in/s") : tr("mm/s"), isInch ? tr("lb") : tr("N")));
            if (now_ && !now_->isEstimate) {
                bump_->setPlainText(QString::fromStdString(shockTableText(*now_, true, units_)));
                rebound_->setPlainText(QString::fromStdString(shockTableText(*now_, false, units_)));
            }
            for (QPlainTextEdit* text : {bump_, rebound_}) {
                text->setPlaceholderText(
                    isInch ? tr("in/s  0   2   4\n1     20  32  55\n3     41  60  90")
                           : tr("mm/s  0    2    4\n25    90   140  245\n75    180  265  400"));
            }
            break;
        case Source::readings:
            words_->showText(tr("Clamp the shock upright at its upper end. For rebound hang a weight on it, "
                                "for bump turn it over "
                                "and put the weight on top; time how long the shaft takes for a stroke once "
                                "it moves steadily. A "
                                "row a reading: click, weight in %1, stroke in %2, seconds. A straight line "
                                "is drawn through a "
                                "click's readings. Nothing and nobody below the weight; a gas shock pushes "
                                "by itself: let it come "
                                "to rest first and count only what you add.")
                                 .arg(isInch ? tr("lb") : tr("kg"), isInch ? tr("in") : tr("mm")));
            for (QPlainTextEdit* text : {bump_, rebound_}) {
                text->setPlaceholderText(isInch ? tr("0  20  4  1.8\n4  20  4  3.1")
                                                : tr("0  9  100  1.8\n4  9  100  3.1"));
            }
            break;
        case Source::estimate:
            words_->showText(
                tr("One straight line each way: 20 % of critical damping in bump and 40 % in rebound, from "
                   "the wheel "
                   "rate and the weight on it. Road cars ride at 20 to 40 % (T. D. Gillespie, Fundamentals "
                   "of Vehicle "
                   "Dynamics, SAE 1992, ch. 5, from memory); twice as much in rebound is common practice, no "
                   "source. "
                   "It may be off by half, has no clicks, and is called an estimate wherever it is used."));
            break;
    }
    refresh();
}

QStringList ShockDialog::refusedLines(const ShockWay& way, const QString& name) const {
    QStringList lines;
    for (const RefusedRow& row : way.refused) {
        lines << QStringLiteral("▲ ") +
                     tr("%1, line %2, '%3': %4")
                         .arg(name)
                         .arg(row.line)
                         .arg(QString::fromStdString(row.text), QString::fromStdString(row.reason));
    }
    return lines;
}

void ShockDialog::refresh() {
    const auto source = static_cast<Source>(source_->currentIndex());
    QStringList lines;
    if (source == Source::estimate) {
        damping_ = estimate_;
        if (!estimate_) {
            lines << QStringLiteral("▲ ") +
                         tr("No estimate: it needs the corner weights and the wheel rate there.");
        }
    } else {
        auto* const read = source == Source::sheet ? readShockTable : readShockReadings;
        const ShockWay bump = read(bump_->toPlainText().toStdString(), units_);
        const ShockWay rebound = read(rebound_->toPlainText().toStdString(), units_);
        lines = refusedLines(bump, tr("bump")) + refusedLines(rebound, tr("rebound"));
        damping_ = joined(bump, rebound);
    }
    if (lines.size() > kToldLines) {
        lines = lines.mid(0, kToldLines) << tr("and %1 more").arg(lines.size() - kToldLines);
    }
    bad_->showText(lines.join(u'\n'));
    bad_->setVisible(!lines.isEmpty());
    good_->showText(verdict());
    take_->setEnabled(damping_.has_value());
}

QString ShockDialog::verdict() const {
    if (!damping_) {
        return tr("Nothing is taken until both ways have rows, and every row can be read.");
    }
    const auto way = [&](const DampingWay& of) {
        const double most = std::ranges::max(of.force, {}, [](const auto& row) { return row.back(); }).back();
        return tr("%1 clicks, %2 at the most")
            .arg(of.force.size())
            .arg(withMark(most, Quantity::force, units_));
    };
    return tr("Bump: %1. Rebound: %2. Up to %3.")
        .arg(way(damping_->bump), way(damping_->rebound),
             withMark(damping_->speeds.back(), Quantity::shaftSpeed, units_));
}

}  // namespace bolthole
