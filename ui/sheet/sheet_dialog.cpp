// SPDX-License-Identifier: MIT
#include "ui/sheet/sheet_dialog.h"

#include "ui/sheet/sheet_file.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/message_bar.h"

#include <QAbstractScrollArea>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QDir>
#include <QFileDialog>
#include <QLabel>
#include <QPrintDialog>
#include <QPrintPreviewWidget>
#include <QPushButton>
#include <QScreen>
#include <QSettings>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr QSize kFirstSize(720, 760);
const QString kFolder = QStringLiteral("files/last-sheet-folder");  // keys of the settings
const QString kPaper = QStringLiteral("sheet/paper");

QToolButton* makeTurn(Qt::ArrowType arrow, const QString& name, QWidget* parent)
{
    auto* const button = new QToolButton(parent);
    button->setArrowType(arrow);
    button->setAccessibleName(name);
    button->setToolTip(name);
    button->setFocusPolicy(Qt::StrongFocus);
    return button;
}

}  // namespace

SheetDialog::SheetDialog(BuildSheet sheet, QWidget* parent)
    : QDialog(parent),
      m_sheet(std::move(sheet)),
      m_printer(QPrinter::HighResolution),
      m_messages(new MessageBar(tr("Notice"), this)),
      m_paper(new QComboBox(this)),
      m_preview(new QPrintPreviewWidget(&m_printer, this)),
      m_back(makeTurn(Qt::LeftArrow, tr("Previous page"), this)),
      m_onward(makeTurn(Qt::RightArrow, tr("Next page"), this)),
      m_number(new QLabel(this))
{
    setWindowTitle(tr("Build sheet"));
    m_paper->addItem(tr("A4"));
    m_paper->addItem(tr("Letter"));
    const int usual = usualPaper(QLocale()) == Paper::A4 ? 0 : 1;
    m_paper->setCurrentIndex(QSettings().value(kPaper, usual).toInt() == 0 ? 0 : 1);
    connect(m_paper, &QComboBox::activated, this,
            [](int index) { QSettings().setValue(kPaper, index); });
    m_paper->setAccessibleName(tr("Paper"));
    m_paper->setToolTip(tr("The paper in your printer."));
    m_preview->setAccessibleName(tr("Build sheet preview"));
    for (QAbstractScrollArea* view : m_preview->findChildren<QAbstractScrollArea*>())
        view->setAccessibleName(tr("Pages of the build sheet"));
    m_number->setAccessibleName(tr("Page shown"));
    connect(m_preview, &QPrintPreviewWidget::paintRequested, this,
            [this](QPrinter* printer) { drawSheet(m_sheet, *printer); });
    connect(m_preview, &QPrintPreviewWidget::previewChanged, this, &SheetDialog::showPageNumber);
    connect(m_paper, &QComboBox::currentIndexChanged, this, &SheetDialog::takePaper);
    connect(m_back, &QToolButton::clicked, this, [this] { turnTo(m_preview->currentPage() - 1); });
    connect(m_onward, &QToolButton::clicked, this,
            [this] { turnTo(m_preview->currentPage() + 1); });
    layOut();
    takePaper();
    resize(kFirstSize.boundedTo(screen()->availableSize()));
}

void SheetDialog::layOut()
{
    auto* const paperLabel = new QLabel(tr("&Paper"), this);
    paperLabel->setBuddy(m_paper);
    auto* const top = new QHBoxLayout;
    top->addWidget(paperLabel);
    top->addWidget(m_paper);
    top->addStretch();
    top->addWidget(m_back);
    top->addWidget(m_number);
    top->addWidget(m_onward);

    auto* const buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    QPushButton* const save = buttons->addButton(tr("&Save as PDF…"), QDialogButtonBox::ActionRole);
    save->setToolTip(tr("Writes all pages to one file."));
    save->setDefault(true);
    QPushButton* const printed = buttons->addButton(tr("P&rint…"), QDialogButtonBox::ActionRole);
    printed->setToolTip(tr("Print at 100 %, or the drilling template is not true."));
    connect(save, &QPushButton::clicked, this, &SheetDialog::askAndSave);
    connect(printed, &QPushButton::clicked, this, &SheetDialog::print);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);

    auto* const layout = new QVBoxLayout(this);
    layout->addWidget(m_messages);
    layout->addLayout(top);
    layout->addWidget(m_preview, 1);
    layout->addWidget(buttons);
}

Paper SheetDialog::paper() const
{
    return m_paper->currentIndex() == 0 ? Paper::A4 : Paper::Letter;
}

void SheetDialog::takePaper()
{
    m_printer.setPageLayout(layoutOf(paper()));
    m_preview->updatePreview();
    turnTo(std::min(m_preview->currentPage(), m_preview->pageCount()));
}

void SheetDialog::turnTo(int page)
{
    m_preview->setCurrentPage(page);
    showPageNumber();
}

void SheetDialog::showPageNumber()
{
    const int page = m_preview->currentPage(), count = m_preview->pageCount();
    m_number->setText(tr("Page %1 of %2").arg(page).arg(count));
    m_back->setEnabled(page > 1);
    m_onward->setEnabled(page < count);
}

QString SheetDialog::message() const
{
    return m_messages->isHidden() ? QString() : m_messages->text();
}

int SheetDialog::pageCount() const
{
    return m_preview->pageCount();
}

bool SheetDialog::saveTo(const QString& path)
{
    const Result<void> saved = saveSheet(m_sheet, paper(), path);
    if (saved) {
        m_messages->display(MessageBar::Kind::Note,
                            tr("Saved %1").arg(QDir::toNativeSeparators(path)), {});
        return true;
    }
    m_messages->display(MessageBar::Kind::Problem,
                        tr("Could not save %1").arg(QDir::toNativeSeparators(path)),
                        displayText(saved.error().what));
    return false;
}

void SheetDialog::askAndSave()
{
    QSettings settings;
    const QString folder = settings.value(kFolder, QDir::homePath()).toString();
    QFileDialog dialog(this, tr("Save the build sheet as"),
                       QDir(folder).filePath(sheetFileName(m_sheet.setup)),
                       tr("PDF files (*.pdf)"));
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(QStringLiteral("pdf"));
    if (dialog.exec() != QDialog::Accepted)
        return;
    const QString path = dialog.selectedFiles().constFirst();
    settings.setValue(kFolder, QFileInfo(path).absolutePath());
    saveTo(path);
}

void SheetDialog::print()
{
    QPrintDialog dialog(&m_printer, this);
    dialog.setOption(QAbstractPrintDialog::PrintPageRange, false);
    if (dialog.exec() == QDialog::Accepted && !drawSheet(m_sheet, m_printer))
        m_messages->display(MessageBar::Kind::Problem, tr("Could not print"),
                            tr("The printer or the file takes nothing: choose another."));
    takePaper();
}

}  // namespace stillbay::ui
