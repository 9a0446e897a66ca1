#include "app/papers/paper_dialogs.h"

#include <QDialog>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QPushButton>
#include <QScreen>
#include <QVBoxLayout>
#include <algorithm>

#include "app/papers/pdf_file.h"
#include "widgets/kit/notice_bar.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr int kTitleBar = 40;  // what the desktop puts over a window

QString suggestedName(const PaperJob& job) {
    QString name = job.title.simplified();
    for (const QChar bad : QStringLiteral("/\\:*?\"<>|")) {
        name.remove(bad);
    }
    return QStringLiteral("%1 %2.pdf").arg(name.isEmpty() ? tr("Car") : name, job.what);
}

/// The sheets as they will be printed, and what to do with them.
class PaperPreview {
  public:
    PaperPreview(QWidget* parent, const PaperJob& job);
    void exec() { dialog_.exec(); }

  private:
    void addControls(QHBoxLayout& row);
    void addButtons(QHBoxLayout& row);
    void showPaper();
    void showSheet(int sheet);
    [[nodiscard]] const QPageLayout& page() const {
        return job_.papers[static_cast<std::size_t>(papers_.currentIndex())].page;
    }

    const PaperJob& job_;
    QDialog dialog_;
    QPrinter printer_{QPrinter::HighResolution};
    QPrintPreviewWidget pages_{&printer_, &dialog_};
    CalmCombo papers_{&dialog_};
    QLabel sheet_{&dialog_};
    NoticeBar notice_{&dialog_};  // the window's own is behind the dialog
    QPushButton before_{tr("&Previous sheet"), &dialog_};
    QPushButton after_{tr("&Next sheet"), &dialog_};
    std::unique_ptr<PrintedSheets> sheets_;
};

PaperPreview::PaperPreview(QWidget* parent, const PaperJob& job) : job_(job), dialog_(parent) {
    dialog_.setWindowTitle(capitalized(job.what));
    const bool upright = job.papers.front().page.orientation() == QPageLayout::Portrait;
    const QSize wanted = upright ? QSize(900, 960) : QSize(1040, 820);
    dialog_.resize(wanted.boundedTo(dialog_.screen()->availableSize() - QSize(0, kTitleBar)));
    printer_.setOutputFormat(QPrinter::PdfFormat);  // the preview must not depend on printers
    auto* layout = new QVBoxLayout(&dialog_);
    layout->addWidget(&notice_);
    QObject::connect(&PaperNews::instance(), &PaperNews::saved, &notice_, &NoticeBar::tell);
    auto* row = new QHBoxLayout;
    addControls(*row);
    addButtons(*row);
    layout->addLayout(row);
    layout->addWidget(&pages_, 1);
    QObject::connect(&pages_, &QPrintPreviewWidget::paintRequested, &dialog_, [this](QPrinter* printer) {
        if (sheets_ && !printSheets(*sheets_, *printer)) {
            sayOfPaper(&dialog_, job_.what,
                       tr("The %1 could not be painted: the preview gave no page to paint on. "
                          "Choose another paper, or save it as PDF.")
                           .arg(job_.what));
        }
    });
    QObject::connect(&pages_, &QPrintPreviewWidget::previewChanged, &dialog_,
                     [this] { showSheet(pages_.currentPage()); });
    showPaper();
}

void PaperPreview::addControls(QHBoxLayout& row) {
    for (const PaperChoice& choice : job_.papers) {
        papers_.addItem(choice.name);
    }
    papers_.setCurrentIndex(job_.paper);
    papers_.setAccessibleName(tr("Paper"));
    auto* paperLabel = new QLabel(tr("P&aper"), &dialog_);
    paperLabel->setBuddy(&papers_);
    row.addWidget(paperLabel);
    row.addWidget(&papers_);
    row.addSpacing(16);
    row.addWidget(&before_);
    row.addWidget(&sheet_);
    row.addWidget(&after_);
    row.addStretch(1);
    QObject::connect(&papers_, &QComboBox::currentIndexChanged, &dialog_, [this] { showPaper(); });
    QObject::connect(&before_, &QPushButton::clicked, &dialog_,
                     [this] { showSheet(pages_.currentPage() - 1); });
    QObject::connect(&after_, &QPushButton::clicked, &dialog_,
                     [this] { showSheet(pages_.currentPage() + 1); });
}

void PaperPreview::addButtons(QHBoxLayout& row) {
    auto* print = new QPushButton(tr("P&rint…"), &dialog_);
    auto* save = new QPushButton(tr("&Save as PDF…"), &dialog_);
    auto* close = new QPushButton(tr("&Close"), &dialog_);
    for (QPushButton* button : {print, save, close}) {
        row.addWidget(button);
    }
    for (QPushButton* button : {print, save, close, &before_, &after_}) {
        button->setAutoDefault(false);
    }
    QObject::connect(print, &QPushButton::clicked, &dialog_, [this] { printPaper(&dialog_, job_, page()); });
    QObject::connect(save, &QPushButton::clicked, &dialog_,
                     [this] { savePaper(&dialog_, job_, page(), {}); });
    QObject::connect(close, &QPushButton::clicked, &dialog_, &QDialog::accept);
}

void PaperPreview::showPaper() {
    printer_.setPageLayout(page());
    sheets_ = job_.layOut(page());
    pages_.updatePreview();
    pages_.fitInView();
    showSheet(1);
}

void PaperPreview::showSheet(int sheet) {
    const int count = sheets_ ? sheets_->sheetCount() : 1;
    const int shown = std::clamp(sheet, 1, count);
    if (pages_.currentPage() != shown) {
        pages_.setCurrentPage(shown);
    }
    sheet_.setText(tr("sheet %1 of %2").arg(shown).arg(count));
    before_.setEnabled(shown > 1);
    after_.setEnabled(shown < count);
}

}  // namespace

PaperNews& PaperNews::instance() {
    static PaperNews news;
    return news;
}

void tellSaved(const QString& what, const QString& fileName) {
    const QFileInfo file(fileName);
    emit PaperNews::instance().saved(
        tr("%1 saved: %2, in %3")
            .arg(capitalized(what), file.fileName(), QDir::toNativeSeparators(file.absolutePath())));
}

void sayOfPaper(QWidget* parent, const QString& what, const QString& message) {
    QMessageBox::warning(parent, capitalized(what), message);
}

void previewPaper(QWidget* parent, const PaperJob& job) {
    PaperPreview(parent, job).exec();
}

bool printPaper(QWidget* parent, const PaperJob& job, const QPageLayout& page) {
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageLayout(page);
    printer.setDocName(job.title);
    QPrintDialog dialog(&printer, parent);
    dialog.setOption(QAbstractPrintDialog::PrintPageRange, false);
    if (dialog.exec() != QDialog::Accepted) {
        return false;
    }
    // The dialog may have changed the paper and turned it; the printer may ask for wider margins.
    printer.setPageOrientation(page.orientation());
    const bool printed = printSheets(*job.layOut(printer.pageLayout()), printer);
    if (!printed) {
        sayOfPaper(parent, job.what,
                   tr("The %1 could not be printed: the printer took no page. See that it "
                      "is on and has paper, or save the %1 as PDF.")
                       .arg(job.what));
    }
    return printed;
}

bool savePaper(QWidget* parent, const PaperJob& job, const QPageLayout& page, QString fileName) {
    if (fileName.isEmpty()) {
        fileName = QFileDialog::getSaveFileName(parent, tr("Save the %1").arg(job.what), suggestedName(job),
                                                tr("PDF files (*.pdf)"));
    }
    if (fileName.isEmpty()) {
        return false;
    }
    const std::string problem =
        writePdf(*job.layOut(page), page, job.title.toStdString(), fileName.toStdString());
    if (!problem.empty()) {
        sayOfPaper(parent, job.what, fileName + QStringLiteral(": ") + QString::fromStdString(problem));
        return false;
    }
    tellSaved(job.what, fileName);
    return true;
}

}  // namespace bolthole
