#include "widgets/pages/target/target_page.h"

#include <QCheckBox>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>
#include <cmath>

#include "widgets/kit/section.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/target/answer_card.h"
#include "widgets/words/length_words.h"

namespace bolthole {

namespace {

constexpr double kRoom = 10;  // percent, either way, that a first window leaves

}  // namespace

TargetWindow firstWindow(const Station& ride, Units units) {
    TargetWindow target{.antiSquatLow = 80, .antiSquatHigh = 120};
    if (!ride.usable) {
        return target;
    }
    const double middle = std::round(ride[Figure::antiSquat] / 5) * 5;
    target.antiSquatLow = middle - kRoom;
    target.antiSquatHigh = middle + kRoom;
    const double distance = ride[Figure::icX];
    const double step = units == Units::inch ? kMetresPerInch : 0.01;
    if (distance > 10 * step) {
        target.icNear = std::floor(0.9 * distance / step) * step;
        target.icFar = std::ceil(distance / 0.9 / step) * step;
    }
    return target;
}

TargetPage::TargetPage(QWidget* parent)
    : WorkPage(tr("Target"), parent),
      message_(new ToneLabel(ToneLabel::Tone::problem, QString(), this)),
      empty_(new ToneLabel(
          ToneLabel::Tone::muted,
          tr("No target is set for this car yet. Answers come here: holes there are, the nearest "
             "misses, where to drill a new hole, how to set a link."),
          this)),
      progress_(new QProgressBar(this)),
      meeting_(new AnswerCard(tr("Holes there are that meet it"), this)),
      nearest_(new AnswerCard(tr("Nearest misses"), this)),
      holes_(new AnswerCard(tr("One new hole"), this)),
      rods_(new AnswerCard(tr("A link's length"), this)) {
    message_->setWordWrap(true);
    progress_->setRange(0, 100);
    progress_->setTextVisible(false);
    progress_->setFixedHeight(6);
    progress_->setAccessibleName(tr("Looking"));
    empty_->setWordWrap(true);
    results()->addWidget(message_);
    results()->addWidget(empty_);
    results()->addWidget(progress_);
    for (AnswerCard* card : {meeting_, nearest_, holes_, rods_}) {
        results()->addWidget(card);
        connect(card, &AnswerCard::taken, this, &WorkPage::edited);
    }
    results()->addStretch(1);
}

TargetPage::~TargetPage() = default;

LengthTreatment TargetPage::lengths() const {
    return state().lengths();
}

std::string TargetPage::shapeOf(const Car& car) const {
    return std::string(car.target ? "wanted" : "nothing") + (hasUpperRod(car) ? " uppers" : "") +
           (car.driveline ? " driveline" : "");
}

void TargetPage::fill(QWidget* content, QVBoxLayout* column) {
    inPictureBox_ = nullptr;
    lengthsBox_ = nullptr;
    if (!state().car.target) {
        column->addWidget(emptySection(content));
        return;
    }
    column->addWidget(
        fieldSection(tr("Target at ride"),
                     {Field::targetLow, Field::targetHigh, Field::targetIcNear, Field::targetIcFar,
                      Field::targetIcLow, Field::targetIcHigh, Field::targetPinionChange},
                     content));
    column->addWidget(fieldSection(tr("Target through travel"),
                                   {Field::targetChangeLow, Field::targetChangeHigh, Field::targetJoint},
                                   content));
    column->addWidget(searchSection(content));
    column->addWidget(clearButton(content));
    column->addWidget(note(content));
}

Section* TargetPage::emptySection(QWidget* parent) {
    auto* section = new Section(tr("Target"), parent);
    auto* words =
        new ToneLabel(ToneLabel::Tone::muted,
                      tr("Say how much anti-squat is wanted, and where the instant center should be: "
                         "the holes, new holes and lengths that give it are looked up."),
                      section);
    words->setWordWrap(true);
    section->body()->addWidget(words);
    auto* button = new QPushButton(tr("Set target"), section);
    button->setObjectName(QStringLiteral("wantSomething"));
    button->setToolTip(tr("Begins with a window around what the car has now"));
    connect(button, &QPushButton::clicked, this, &TargetPage::wantSomething);
    section->body()->addWidget(button);
    return section;
}

void TargetPage::wantSomething() {
    const bool known = state().traceIsCurrent && state().trace.assembly.usable();
    hub().request(SetTarget{firstWindow(known ? state().trace.ride : Station{}, state().style.units)},
                  {.field = Field::targetLow});
}

Section* TargetPage::fieldSection(const QString& title, std::initializer_list<Field> fields,
                                  QWidget* parent) {
    auto* section = new Section(title, parent);
    for (const Field field : fields) {
        section->body()->addWidget(row(carField(field), tr("any"), section));
    }
    return section;
}

Section* TargetPage::searchSection(QWidget* parent) {
    auto* section = new Section(tr("How"), parent);
    section->body()->addWidget(new BoxRow(tr("Links' lengths"), lengthsBox(section), section));
    inPictureBox_ = new QCheckBox(tr("Set it in the side view (W there)"), section);
    inPictureBox_->setChecked(inPicture_);
    inPictureBox_->setToolTip(wrappedToolTip(
        tr("Shows the target instant center as a mark in the side view of the Links page, to be "
           "dragged, or moved with Ctrl and the arrow keys")));
    connect(inPictureBox_, &QCheckBox::toggled, this, &TargetPage::inPictureChosen);
    section->body()->addWidget(inPictureBox_);
    return section;
}

// The same choice as over the hole combinations.
QWidget* TargetPage::lengthsBox(QWidget* parent) {
    lengthsBox_ = new CalmCombo(parent);
    lengthsBox_->setObjectName(QStringLiteral("targetLengths"));
    lengthsBox_->setAccessibleName(tr("Links' lengths"));
    for (const LengthTreatment each : kLengthTreatments) {
        if (each != LengthTreatment::uppers || hasUpperRod(state().car)) {
            lengthsBox_->addItem(lengthsLabel(each));
            lengthsBox_->setItemData(lengthsBox_->count() - 1, wrappedToolTip(lengthsHelp(each)),
                                     Qt::ToolTipRole);
        }
    }
    showLengths();
    connect(lengthsBox_, &QComboBox::activated, this,
            [this](int index) { emit lengthsChosen(kLengthTreatments[static_cast<std::size_t>(index)]); });
    return lengthsBox_;
}

void TargetPage::showLengths() {
    if (lengthsBox_ != nullptr) {
        lengthsBox_->setCurrentIndex(static_cast<int>(lengths()));
        lengthsBox_->setToolTip(wrappedToolTip(lengthsHelp(lengths())));
    }
}

QWidget* TargetPage::clearButton(QWidget* parent) {
    auto* button = new QPushButton(tr("Clear target"), parent);
    button->setObjectName(QStringLiteral("wantNothing"));
    connect(button, &QPushButton::clicked, this, [this] { emit edited(SetTarget{std::nullopt}); });
    return button;
}

QWidget* TargetPage::note(QWidget* parent) const {
    auto* words = new ToneLabel(
        ToneLabel::Tone::muted,
        tr("“9 in 10” is the chance that the car really lies within all of it, though the tape may be off: "
           "of "
           "ten cars that measure like this one, nine do. A new hole is put as near to the current one as "
           "will "
           "do, so it often lies at a limit, where the chance is about even: narrow the window to be "
           "surer.\n\n"
           "A new hole weakens a bracket. Bracket strength is for a qualified person; plate, edge distance "
           "and "
           "spacing are what was entered on the Brackets page, no more. Car on rated stands, wheels chocked, "
           "before a bolt comes out."),
        parent);
    words->setWordWrap(true);
    words->setContentsMargins(4, 0, 4, 0);
    return words;
}

void TargetPage::showInPicture(bool on) {
    inPicture_ = on;
    if (inPictureBox_ != nullptr) {
        inPictureBox_->setChecked(on);
    }
}

void TargetPage::refresh() {
    showLengths();
    emit searchRequested();  // answers to another car are taken down before they are shown again
    showMessage();
    showCards();
}

void TargetPage::showAnswers(const std::shared_ptr<const TargetAnswers>& answers,
                             const std::shared_ptr<const Car>& car) {
    answers_ = answers;
    answeredCar_ = car;
    if (isVisible()) {
        showMessage();
        showCards();
    }
}

void TargetPage::showProgress(double share) {
    progress_->setValue(static_cast<int>(100 * share));
}

void TargetPage::showMessage() {
    QStringList said;
    const Car& car = state().car;
    if (car.target) {
        for (const TargetLimit& limit : limitsOf(*car.target)) {
            if (limit.low > limit.high) {
                said << tr(
                    "▲ A least lies above its most, or the nearest distance past the farthest: nothing can "
                    "lie there.");
                break;
            }
        }
    }
    if (answers_ && !answers_->problem.empty() && car.target) {
        said << QStringLiteral("▲ ") + capitalized(QString::fromStdString(answers_->problem)) + u'.';
    }
    sayWhatIsWrong(*message_, said);
    progress_->setVisible(car.target && !answers_ && state().traceIsCurrent);
}

void TargetPage::showCards() {
    empty_->setVisible(!state().car.target);
    const bool there = state().car.target && answers_ && answers_->problem.empty();
    for (AnswerCard* card : {meeting_, nearest_, holes_, rods_}) {
        card->setVisible(there);
    }
    if (!there) {
        return;
    }
    Car car = *answeredCar_;
    car.units = state().style.units;
    const bool more = answers_->met > answers_->meeting.size();
    const QString none = answers_->tooMany
                             ? tr("There are %1 hole combinations, too many to try unasked: Hole "
                                  "combinations on the Links page can.")
                                   .arg(answers_->total)
                             : tr("None of the %1 hole combinations meets all of it.").arg(answers_->total);
    meeting_->showRows(
        combinationRows(answers_->meeting, car, lengths()), none,
        more ? tr("The first %1 of %2, least change first; the rest stand in Hole combinations.")
                   .arg(answers_->meeting.size())
                   .arg(answers_->met)
             : QString());
    nearest_->showRows(combinationRows(answers_->nearest, car, lengths()),
                       tr("There is no other combination."));
    holes_->showRows(
        holeRows(answers_->holes, car, state().style),
        tr("No plate is entered yet. Enter a bracket's outline on the Brackets page, and a place "
           "for one new hole in it is looked for."),
        answers_->holes.empty()
            ? QString()
            : tr("All other links as they are; a pair is drilled on both sides. A new hole weakens a "
                 "bracket: bracket strength is for a qualified person."));
    rods_->showRows(lengthRows(answers_->lengths, car, state().style), tr("No link has an adjuster."),
                    answers_->lengths.empty()
                        ? QString()
                        : tr("All holes as they are, the other links as long as they are."));
}

}  // namespace bolthole
