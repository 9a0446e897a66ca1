#include "widgets/pages/days/import_preview.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QPushButton>
#include <QVBoxLayout>

#include "widgets/kit/read_table.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/days/pass_words.h"

namespace bolthole {

namespace {

constexpr std::size_t kMostShown = 200;

ReadTable* passesTable(const ImportSummary& summary, Units units, QWidget* parent) {
    auto* table = new ReadTable(ImportPreview::tr("Passes in the table"),
                                {ImportPreview::tr("Pass"), ImportPreview::tr("Day"),
                                 ImportPreview::tr("Surface"), ImportPreview::tr("60 ft, s"), QString()},
                                parent);
    table->setMostRows(12);
    std::vector<std::pair<const Pass*, bool>> rows;
    for (const Pass& pass : summary.changed) {
        rows.emplace_back(&pass, true);
    }
    for (const Pass& pass : summary.added) {
        rows.emplace_back(&pass, false);
    }
    rows.resize(std::min(rows.size(), kMostShown));
    table->setRows(static_cast<int>(rows.size()));
    int row = 0;
    for (const auto& [pass, isChanged] : rows) {
        table->setCell(row, 0, QString::number(pass->number));
        table->setCell(row, 1, dayText(pass->date), true);
        table->setCell(row, 2, surfaceText(pass->surface.kind, pass->surface.name), true);
        table->setCell(row, 3, passNumberText(pass->sixtyFoot, PassField::sixtyFoot, units));
        table->setCell(row, 4, isChanged ? ImportPreview::tr("changes") : ImportPreview::tr("new"), true);
        ++row;
    }
    table->fit();
    return table;
}

ReadTable* problemsTable(const QStringList& problems, QWidget* parent) {
    auto* table = new ReadTable(ImportPreview::tr("What can't be read"),
                                {ImportPreview::tr("What can't be read")}, parent);
    table->setMostRows(12);
    table->setRows(static_cast<int>(problems.size()));
    for (int row = 0; row < problems.size(); ++row) {
        table->setCell(row, 0, problems[row], true);
    }
    table->setSelectionMode(QAbstractItemView::NoSelection);
    table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    table->fit();
    return table;
}

}  // namespace

ImportPreview::ImportPreview(const ImportSummary& summary, Units units, QWidget* parent) : QDialog(parent) {
    setObjectName(QStringLiteral("importPreview"));
    setWindowTitle(tr("Passes from %1").arg(summary.source));
    setMinimumWidth(560);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(20, 16, 20, 16);
    column->setSpacing(10);
    const bool isReadable = summary.problems.isEmpty();
    const bool isEmpty = summary.added.empty() && summary.changed.empty();
    QString words =
        tr("%1 new, %2 changed. Setups are matched by their names; a pass without one stands on none.")
            .arg(summary.added.size())
            .arg(summary.changed.size());
    if (!isReadable) {
        words = tr("▲ Nothing is taken in: %1 can't be read. Mend them in the table and take it in again.")
                    .arg(summary.problems.size() == 1
                             ? tr("one thing")
                             : tr("%n things", nullptr, static_cast<int>(summary.problems.size())));
    } else if (isEmpty) {
        words = tr("Nothing in it that is not in the log already.");
    }
    auto* said = new ToneLabel(isReadable ? ToneLabel::Tone::plain : ToneLabel::Tone::problem, words, this);
    said->setFont(textFont(TextSize::body));
    said->setWordWrap(true);
    column->addWidget(said);
    if (!isReadable) {
        column->addWidget(problemsTable(summary.problems, this));
    } else if (!isEmpty) {
        column->addWidget(passesTable(summary, units, this));
    }
    if (!summary.unknown.isEmpty()) {
        auto* unknown = new ToneLabel(
            ToneLabel::Tone::muted, tr("Columns passed over: %1").arg(summary.unknown.join(tr(", "))), this);
        unknown->setWordWrap(true);
        column->addWidget(unknown);
    }
    auto* buttons = new QDialogButtonBox(this);
    if (isReadable && !isEmpty) {
        auto* take = buttons->addButton(tr("Take them in"), QDialogButtonBox::AcceptRole);
        take->setDefault(true);
    }
    buttons->addButton(isReadable && !isEmpty ? QDialogButtonBox::Cancel : QDialogButtonBox::Close);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
}

}  // namespace bolthole
