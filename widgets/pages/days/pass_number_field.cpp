#include "widgets/pages/days/pass_number_field.h"

#include <QFocusEvent>
#include <QKeyEvent>
#include <QStyle>
#include <limits>

#include "geometry/units/text.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/said.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/days/pass_words.h"

namespace bolthole {

namespace {

bool isHowToKey(const QKeyEvent& event) {
    return event.key() == Qt::Key_F1 && event.modifiers() == Qt::NoModifier;
}

}  // namespace

QString limitsOf(PassField field, Units units) {
    return QString::fromStdString(refusal(field, std::numeric_limits<double>::infinity(), units));
}

PassNumberField::PassNumberField(PassField field, QWidget* parent) : QLineEdit(parent), field_(field) {
    setAlignment(Qt::AlignRight);
    setAccessibleName(said(ruleOf(field).words));
    renewTip();
}

void PassNumberField::showNumber(const OptionalNumber& inFile, Units units) {
    units_ = units;
    shown_ = inFile;
    shownText_ = passNumberText(inFile, field_, units).replace(kMinus, QLatin1Char('-'));
    setText(shownText_);
    check();
    renewTip();
}

bool PassNumberField::isTyped() const {
    return text().trimmed() != shownText_;
}

TypedPassNumber PassNumberField::typed() const {
    QString words = text().trimmed();
    if (!isTyped()) {
        return {shown_, {}};
    }
    const QString mark = passUnitText(field_, units_);
    if (words.endsWith(mark, Qt::CaseInsensitive)) {
        words.chop(mark.size());
        words = words.trimmed();
    }
    if (words.isEmpty()) {
        return {};
    }
    // Fractions without a unit are meant as they stand, whatever lengths are shown in.
    const TypedNumber read = readTyped(words.toStdString(), Quantity::ratio, Units::inch);
    if (!read.value) {
        return {std::nullopt, QString::fromStdString(read.problem)};
    }
    const double value = fromShown(*read.value, ruleOf(field_).unit, units_);
    const std::string expected = refusal(field_, value, units_);
    if (!expected.empty()) {
        return {std::nullopt, tr("expected %1").arg(QString::fromStdString(expected))};
    }
    return {value, {}};
}

TypedPassNumber PassNumberField::check() {
    TypedPassNumber read = typed();
    if (read.problem != problem_) {
        problem_ = read.problem;
        setProperty("problem", !problem_.isEmpty());
        style()->unpolish(this);
        style()->polish(this);
        renewTip();
        emit problemChanged(problem_);
    }
    return read;
}

void PassNumberField::renewTip() {
    const QString help =
        howToMeasure(field_) + QLatin1Char('\n') + capitalized(limitsOf(field_, units_)) + QLatin1Char('.');
    setToolTip(wrappedToolTip(problem_.isEmpty() ? help : QStringLiteral("▲ ") + problem_));
    setAccessibleDescription(problem_.isEmpty() ? help : problem_);
}

bool PassNumberField::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (isHowToKey(*key)) {
            event->accept();  // else the window's own help would come
            return true;
        }
        if (!isTyped() && (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo))) {
            event->ignore();
            return false;
        }
    }
    return QLineEdit::event(event);
}

void PassNumberField::keyPressEvent(QKeyEvent* event) {
    if (isHowToKey(*event)) {
        emit howToRequested(field_);
        return;
    }
    QLineEdit::keyPressEvent(event);
}

void PassNumberField::focusInEvent(QFocusEvent* event) {
    QLineEdit::focusInEvent(event);
    if (event->reason() != Qt::MouseFocusReason && event->reason() != Qt::PopupFocusReason) {
        selectAll();
    }
}

void PassNumberField::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    if (event->reason() != Qt::PopupFocusReason) {
        check();
    }
}

}  // namespace bolthole
