#include "app/change_dialogs.h"

#include <QComboBox>
#include <QDialog>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/change_file.h"

namespace bolthole {

namespace {

void say(QWidget* parent, const QString& what) {
    QMessageBox::warning(parent, QStringLiteral("Change sheet"), what);
}

QString suggestedName(const ChangeRequest& request) {
    QString name = QString::fromStdString(request.after.title).simplified();
    for (const QChar bad : QStringLiteral("/\\:*?\"<>|")) {
        name.remove(bad);
    }
    return (name.isEmpty() ? QStringLiteral("Car") : name) + QStringLiteral(" change sheet.pdf");
}

/// The preview: the sheets as they will be printed, and what to do with them.
class ChangePreview {
  public:
    ChangePreview(QWidget* parent, const ChangeRequest& request);
    void exec() { dialog_.exec(); }

  private:
    void addControls(QHBoxLayout& row);
    void addButtons(QHBoxLayout& row);
    void showPaper(ChangePaper paper);
    void showSheet(int sheet);
    [[nodiscard]] ChangePaper paper() const {
        return static_cast<ChangePaper>(papers_.currentData().toInt());
    }

    const ChangeRequest& request_;
    QDialog dialog_;
    QPrinter printer_{QPrinter::HighResolution};
    QPrintPreviewWidget pages_{&printer_, &dialog_};
    QComboBox papers_{&dialog_};
    QLabel sheet_{&dialog_};
    QPushButton before_{QStringLiteral("&Previous sheet"), &dialog_};
    QPushButton after_{QStringLiteral("&Next sheet"), &dialog_};
    std::unique_ptr<ChangeSheet> made_;
};

ChangePreview::ChangePreview(QWidget* parent, const ChangeRequest& request)
    : request_(request), dialog_(parent) {
    dialog_.setWindowTitle(QStringLiteral("Change sheet"));
    dialog_.resize(900, 960);
    printer_.setOutputFormat(QPrinter::PdfFormat);  // the preview must not depend on printers
    auto* layout = new QVBoxLayout(&dialog_);
    auto* row = new QHBoxLayout;
    addControls(*row);
    addButtons(*row);
    layout->addLayout(row);
    layout->addWidget(&pages_, 1);
    QObject::connect(&pages_, &QPrintPreviewWidget::paintRequested, &dialog_, [this](QPrinter* printer) {
        if (made_ && !printSheet(*made_, *printer)) {
            say(&dialog_, QStringLiteral("The change sheet could not be painted."));
        }
    });
    QObject::connect(&pages_, &QPrintPreviewWidget::previewChanged, &dialog_,
                     [this] { showSheet(pages_.currentPage()); });
    showPaper(paper());
}

void ChangePreview::addControls(QHBoxLayout& row) {
    papers_.addItem(QString::fromUtf8("Letter, 8 1/2 × 11 in"), static_cast<int>(ChangePaper::letter));
    papers_.addItem(QString::fromUtf8("A4, 210 × 297 mm"), static_cast<int>(ChangePaper::a4));
    papers_.setCurrentIndex(papers_.findData(static_cast<int>(usualChangePaper(request_.style.units))));
    papers_.setAccessibleName(QStringLiteral("Paper"));
    auto* paperLabel = new QLabel(QStringLiteral("P&aper"), &dialog_);
    paperLabel->setBuddy(&papers_);
    row.addWidget(paperLabel);
    row.addWidget(&papers_);
    row.addSpacing(16);
    row.addWidget(&before_);
    row.addWidget(&sheet_);
    row.addWidget(&after_);
    row.addStretch(1);
    QObject::connect(&papers_, &QComboBox::currentIndexChanged, &dialog_, [this] { showPaper(paper()); });
    QObject::connect(&before_, &QPushButton::clicked, &dialog_,
                     [this] { showSheet(pages_.currentPage() - 1); });
    QObject::connect(&after_, &QPushButton::clicked, &dialog_,
                     [this] { showSheet(pages_.currentPage() + 1); });
}

void ChangePreview::addButtons(QHBoxLayout& row) {
    auto* print = new QPushButton(QStringLiteral("P&rint…"), &dialog_);
    auto* save = new QPushButton(QStringLiteral("&Save as PDF…"), &dialog_);
    auto* close = new QPushButton(QStringLiteral("&Close"), &dialog_);
    for (QPushButton* button : {print, save, close}) {
        row.addWidget(button);
    }
    for (QPushButton* button : {print, save, close, &before_, &after_}) {
        button->setAutoDefault(false);
    }
    QObject::connect(print, &QPushButton::clicked, &dialog_,
                     [this] { printChangeSheetOnPaper(&dialog_, request_, paper()); });
    QObject::connect(save, &QPushButton::clicked, &dialog_,
                     [this] { saveChangeSheet(&dialog_, request_, paper()); });
    QObject::connect(close, &QPushButton::clicked, &dialog_, &QDialog::accept);
}

void ChangePreview::showPaper(ChangePaper paper) {
    const QPageLayout page = changePageOf(paper);
    printer_.setPageLayout(page);
    made_ = std::make_unique<ChangeSheet>(request_, page);
    pages_.updatePreview();
    pages_.fitInView();
    showSheet(1);
}

void ChangePreview::showSheet(int sheet) {
    const int count = made_ ? made_->sheetCount() : 1;
    const int shown = std::clamp(sheet, 1, count);
    if (pages_.currentPage() != shown) {
        pages_.setCurrentPage(shown);
    }
    sheet_.setText(QStringLiteral("sheet %1 of %2").arg(shown).arg(count));
    before_.setEnabled(shown > 1);
    after_.setEnabled(shown < count);
}

}  // namespace

void previewChangeSheet(QWidget* parent, const ChangeRequest& request) {
    ChangePreview(parent, request).exec();
}

bool printChangeSheetOnPaper(QWidget* parent, const ChangeRequest& request, ChangePaper paper) {
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageLayout(changePageOf(paper));
    printer.setDocName(QString::fromStdString(request.after.title));
    QPrintDialog dialog(&printer, parent);
    dialog.setOption(QAbstractPrintDialog::PrintPageRange, false);
    if (dialog.exec() != QDialog::Accepted) {
        return false;
    }
    // The dialog may have changed the paper and turned it; the printer may ask for wider margins.
    printer.setPageOrientation(QPageLayout::Portrait);
    const bool printed = printSheet(ChangeSheet(request, printer.pageLayout()), printer);
    if (!printed) {
        say(parent, QStringLiteral("The change sheet could not be printed."));
    }
    return printed;
}

bool saveChangeSheet(QWidget* parent, const ChangeRequest& request, QString fileName) {
    return saveChangeSheet(parent, request, usualChangePaper(request.style.units), std::move(fileName));
}

bool saveChangeSheet(QWidget* parent, const ChangeRequest& request, ChangePaper paper, QString fileName) {
    if (fileName.isEmpty()) {
        fileName = QFileDialog::getSaveFileName(parent, QStringLiteral("Save the change sheet"),
                                                suggestedName(request), QStringLiteral("PDF files (*.pdf)"));
    }
    if (fileName.isEmpty()) {
        return false;
    }
    const std::string problem = writeChangeSheet(request, paper, fileName.toStdString());
    if (!problem.empty()) {
        say(parent, fileName + QStringLiteral(": ") + QString::fromStdString(problem));
    }
    return problem.empty();
}

}  // namespace bolthole
