#include "widgets/fields/length_part.h"

#include <QCoreApplication>
#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

/// More than this between written length and holes is worth a question: a sixteenth of an inch.
constexpr double kWorthAsking = kMetresPerInch / 16.0;

/// "fits the holes: 20 1/8": what an unwritten length shows.
QString fittedWords(double distance, NumberStyle style) {
    return QCoreApplication::translate("LengthPart", "fits the holes: %1")
        .arg(QString::fromStdString(fieldText(distance, Quantity::length, style)));
}

}  // namespace

LengthQuestion::LengthQuestion(const QString& linkName, QWidget* parent)
    : QWidget(parent), words_(new QLabel(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(14, 8, 8, 8);
    words_->setWordWrap(true);
    words_->setFont(textFont(TextSize::small));
    words_->setTextFormat(Qt::PlainText);
    column->addWidget(words_);
    auto* length = new QPushButton(tr("The length is right"), this);
    length->setToolTip(
        wrappedToolTip(tr("Keep the written length: the axle stands where that puts it. Asked "
                          "again when length or holes change.")));
    auto* holes = new QPushButton(tr("The holes are right"), this);
    holes->setToolTip(
        wrappedToolTip(tr("Drop the written length: the link is taken to fit the current holes.")));
    length->setAccessibleName(tr("%1: the length is right").arg(linkName));
    holes->setAccessibleName(tr("%1: the holes are right").arg(linkName));
    for (QPushButton* button : {length, holes}) {
        button->setFont(textFont(TextSize::small));
        column->addWidget(button);
    }
    connect(length, &QPushButton::clicked, this, &LengthQuestion::lengthIsRight);
    connect(holes, &QPushButton::clicked, this, &LengthQuestion::holesAreRight);
    hide();
}

void LengthQuestion::ask(const QString& words) {
    if (words_->text() != words) {
        words_->setText(words);
        setAccessibleDescription(words);
    }
    setVisible(!words.isEmpty());
}

void LengthQuestion::paintEvent(QPaintEvent*) {
    const Theme& colors = theme();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colors.border, 1));
    painter.setBrush(colors.card);
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 4, 4);
    painter.setPen(Qt::NoPen);
    painter.setBrush(colors.problem);
    painter.drawRoundedRect(QRectF(0, 0, 4, height()), 2, 2);
}

LengthPart::LengthPart(SheetHub& hub, int link, QWidget* parent) : QWidget(parent), hub_(hub), link_(link) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(5);
    addLength();
    addAdjuster();
    addFinder();
    refresh();
}

const Link& LengthPart::link() const {
    return hub_.state().car.links[static_cast<std::size_t>(link_)];
}

void LengthPart::addLength() {
    const QString name = linkName(hub_.state().car, link_);
    length_ = hub_.makeField(linkField(Field::linkLength, link_), this);
    length_->setMayBeEmpty(true);
    auto* row = new NumberRow(tr("Length"), length_, this);
    clear_ =
        smallButton(QStringLiteral("×"), tr("%1: remove the length, fit the holes").arg(name),
                    tr("Remove the written length: the link is then taken to fit the current holes."), this);
    row->addTrailing(clear_);
    connect(clear_, &QAbstractButton::clicked, this,
            [this] { hub_.request(ClearNumber{linkField(Field::linkLength, link_)}); });
    layout()->addWidget(row);
    question_ = new LengthQuestion(name, this);
    layout()->addWidget(question_);
    connect(question_, &LengthQuestion::holesAreRight, this,
            [this] { hub_.request(ClearNumber{linkField(Field::linkLength, link_)}); });
    connect(question_, &LengthQuestion::lengthIsRight, this, [this] {
        auto& accepted = hub_.acceptedLengths;
        std::erase_if(accepted, [this](const auto& entry) { return entry.link == link_; });
        accepted.push_back({link_, link().length.value_or(0.0), holeDistance(link())});
        length_->setFocus();
        refreshQuestion();
    });
}

void LengthPart::addAdjuster() {
    const FieldId ends = linkField(Field::adjusterEnds, link_);
    const FieldWords words = wordsFor(hub_.state().car, ends);
    adjuster_ = new CalmCombo(this);
    adjuster_->addItems({tr("none"), tr("both ends threaded"), tr("one end threaded")});
    adjuster_->setAccessibleName(words.name);
    adjuster_->setAccessibleDescription(words.howTo);
    adjuster_->setToolTip(wrappedToolTip(words.howTo));
    hub_.addEditor(ends, adjuster_);
    connect(adjuster_, &QComboBox::activated, this, &LengthPart::chooseAdjuster);
    layout()->addWidget(new BoxRow(words.label, adjuster_, this));
    NumberField* pitch = hub_.makeField(linkField(Field::adjusterPitch, link_), this);
    pitch_ = new NumberRow(tr("Thread pitch"), pitch, this);
    threads_ = new ToneLabel(ToneLabel::Tone::muted, QString(), this);
    threads_->setContentsMargins(10, 0, 0, 0);
    layout()->addWidget(pitch_);
    layout()->addWidget(threads_);
    limits_ = new LimitPart(hub_, link_, this);
    layout()->addWidget(limits_);
}

void LengthPart::addFinder() {
    auto* open =
        smallButton(tr("Find forward from length…"),
                    tr("%1: find forward from length").arg(linkName(hub_.state().car, link_)),
                    tr("Where a fore-aft figure is hard to tape: work it out from both heights and the "
                       "length between the bolts."),
                    this);
    layout()->addWidget(open);
    layout()->setAlignment(open, Qt::AlignLeft);
    finder_ = new ForwardFinder(hub_, link_, this);
    layout()->addWidget(finder_);
    connect(open, &QAbstractButton::clicked, finder_, &ForwardFinder::open);
}

void LengthPart::chooseAdjuster(int index) {
    if (index == 0) {
        hub_.request(SetAdjuster{link_, std::nullopt});
        return;
    }
    Adjuster adjuster = link().adjuster.value_or(Adjuster{.pitch = kUsualPitch});
    adjuster.threadedEnds = index == 1 ? 2 : 1;
    hub_.request(SetAdjuster{link_, adjuster});
}

void LengthPart::refresh() {
    const double distance = holeDistance(link());
    clear_->setVisible(link().length.has_value());
    length_->setStepStart(distance);
    const QString fitted = fittedWords(distance, hub_.state().style);
    if (length_->placeholderText() != fitted) {
        length_->setPlaceholderText(fitted);
    }
    refreshQuestion();
    refreshAdjuster();
    limits_->refresh();
    finder_->refresh();
}

void LengthPart::refreshQuestion() {
    const double distance = holeDistance(link());
    const double length = link().length.value_or(distance);
    const SheetHub::AcceptedLength now{link_, length, distance};
    const auto& accepted = hub_.acceptedLengths;
    const bool isAccepted = std::find(accepted.begin(), accepted.end(), now) != accepted.end();
    QString words;
    if (std::abs(length - distance) > kWorthAsking && !isAccepted) {
        const auto& warnings = hub_.state().warnings;
        const FieldId id = linkField(Field::linkLength, link_);
        const auto found = std::find_if(warnings.begin(), warnings.end(),
                                        [&](const Warning& warning) { return warning.id == id; });
        if (found != warnings.end()) {
            words = tr("%1\nWhich is right?").arg(QString::fromStdString(sentence(found->finding)));
        }
    }
    question_->ask(words);
}

void LengthPart::refreshAdjuster() {
    const std::optional<Adjuster>& adjuster = link().adjuster;
    const int index = !adjuster ? 0 : adjuster->threadedEnds == 2 ? 1 : 2;
    if (adjuster_->currentIndex() != index) {
        adjuster_->setCurrentIndex(index);
    }
    pitch_->setVisible(adjuster.has_value());
    threads_->setVisible(adjuster.has_value());
    const double pitch = adjuster ? adjuster->pitch : 0.0;
    if (pitch > 0 && pitch != shownPitch_) {
        shownPitch_ = pitch;
        threads_->showText(tr("%1 threads per inch").arg(digitsText(kMetresPerInch / pitch, 3)));
    }
}

}  // namespace bolthole
