// SPDX-License-Identifier: MIT
#include "ui/tunes/tunes_panel.h"

#include "core/setup/tunes.h"
#include "ui/tunes/small_curve.h"
#include "ui/tunes/tunes_model.h"
#include "ui/tunes/tunes_strip.h"
#include "ui/widgets/labels.h"

#include <QAction>
#include <QApplication>
#include <QDateTime>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QTableView>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr std::chrono::milliseconds kQuiet(400);  // after the last edit
constexpr int kRowsInSight = 3;                   // more of them scroll

}  // namespace

TunesPanel::TunesPanel(Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_model(new TunesModel(document, this)),
      m_table(new QTableView),
      m_fold(new QToolButton),
      m_strip(new TunesStrip(*m_model)),
      m_refusal(new ProblemLabel),
      m_job({.done =
                 [this](const Result<std::vector<Result<TuneFigures>>>& figures) {
                     if (figures)
                         m_model->setFigures(*figures);
                     emit figuresChanged();
                 }},
            kQuiet)
{
    makeActions();
    makeTable();
    layOut();
    connect(&m_document, &Document::setupChanged, this, &TunesPanel::setupChanged);
    connect(&m_document, &Document::fileChanged, this,
            [this] { m_keep->setEnabled(m_document.hasCraft()); });
    connect(m_strip, &TunesStrip::opened, this, &TunesPanel::openAt);
    connect(m_model, &TunesModel::modelReset, this, &TunesPanel::showState);
    connect(m_model, &TunesModel::refused, m_refusal, &ProblemLabel::refuse);
    showState();
}

void TunesPanel::makeActions()
{
    m_keep = new QAction(tr("&Keep this tune"), this);
    m_keep->setShortcut(Qt::CTRL | Qt::Key_K);
    m_keep->setToolTip(tr("Puts the present tube, length, stretch and mounts aside under a name."));
    m_keep->setEnabled(false);  // until there is a craft
    connect(m_keep, &QAction::triggered, this, &TunesPanel::keep);
    m_restore = new QAction(tr("Take this tune"), this);
    m_restore->setToolTip(tr("Makes the chosen tune the present one; one step for undo."));
    connect(m_restore, &QAction::triggered, this, &TunesPanel::restore);
    m_delete = new QAction(tr("Delete"), this);
    m_delete->setToolTip(tr("Deletes the chosen tune; undo brings it back."));
    m_delete->setShortcut(QKeySequence::Delete);
    m_delete->setShortcutContext(Qt::WidgetShortcut);
    connect(m_delete, &QAction::triggered, this, &TunesPanel::remove);
    m_table->addAction(m_delete);
}

void TunesPanel::makeTable()
{
    m_table->setAccessibleName(tr("Kept tunes"));
    m_table->setModel(m_model);
    m_table->setItemDelegateForColumn(TunesModel::Curve, new SmallCurve(*m_model, this));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setTabKeyNavigation(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->setShowGrid(false);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setSectionResizeMode(TunesModel::Notes, QHeaderView::Stretch);
    m_table->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    connect(m_table->selectionModel(), &QItemSelectionModel::selectionChanged, this,
            &TunesPanel::showState);
}

void TunesPanel::layOut()
{
    QFont bold = m_fold->font();
    bold.setBold(true);
    m_fold->setFont(bold);
    m_fold->setText(tr("Kept tunes"));
    m_fold->setAccessibleName(tr("Show the kept tunes"));
    m_fold->setToolTip(tr("Opens the line into a list, to rename, take back or delete a tune."));
    m_fold->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    m_fold->setAutoRaise(true);
    m_fold->setFocusPolicy(Qt::StrongFocus);
    m_fold->setObjectName(QStringLiteral("view.tunesFold"));
    m_fold->setCheckable(true);
    connect(m_fold, &QToolButton::toggled, this, &TunesPanel::showState);
    auto* const head = new QHBoxLayout;
    head->addWidget(m_fold);
    head->addWidget(m_strip, 1);
    m_strip->setAccessibleName(tr("Kept tunes in a line"));
    for (QAction* action : {m_restore, m_delete}) {
        auto* const button = new QToolButton;
        button->setDefaultAction(action);
        button->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
        button->setFocusPolicy(Qt::StrongFocus);
        button->setAccessibleName(action == m_restore ? tr("Take the chosen tune")
                                                      : tr("Delete the chosen tune"));
        head->addWidget(button);
        m_ofChosen.push_back(button);
    }
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(8, 3, 8, 3);
    layout->setSpacing(2);
    layout->addLayout(head);
    layout->addWidget(m_refusal);
    layout->addWidget(m_table);
}

int TunesPanel::chosen() const
{
    const QModelIndexList rows = m_table->selectionModel()->selectedRows();
    return rows.isEmpty() ? -1 : rows.front().row();
}

void TunesPanel::showState()
{
    const int rows = m_model->rowCount();
    m_fold->setArrowType(m_fold->isChecked() ? Qt::DownArrow : Qt::RightArrow);
    setVisible(rows > 0);
    const bool isOpen = rows > 0 && m_fold->isChecked();
    m_table->setVisible(isOpen);
    for (QWidget* button : m_ofChosen)
        button->setVisible(isOpen);
    const int height = m_table->verticalHeader()->defaultSectionSize();
    m_table->setFixedHeight(m_table->horizontalHeader()->sizeHint().height() +
                            std::min(rows, kRowsInSight) * height + 2);
    m_restore->setEnabled(chosen() >= 0);
    m_delete->setEnabled(chosen() >= 0);
}

bool TunesPanel::edit(const QString& text, const std::function<void(Setup&)>& change)
{
    return m_refusal->display(m_document.edit(text, {}, change));
}

void TunesPanel::keep()
{
    const Setup& setup = m_document.setup();
    const std::string now = QDateTime::currentDateTimeUtc().toString(Qt::ISODate).toStdString();
    const Tune tune = presentTune(setup, freeTuneName(setup), now);
    if (!edit(tr("Keep a tune"), [&](Setup& changed) { changed.tunes.push_back(tune); }))
        return;
    m_table->selectRow(m_model->rowCount() - 1);
    m_table->scrollToBottom();
    if (hasFocusInside() && m_table->isVisible())  // a slider that is being tried keeps it
        m_table->setFocus();
}

void TunesPanel::openAt(int row)
{
    m_fold->setChecked(true);
    m_table->selectRow(row);
    m_table->scrollTo(m_table->model()->index(row, 0));
    m_table->setFocus();
}

void TunesPanel::restore()
{
    const int row = chosen();
    if (row < 0)
        return;
    const Tune tune = m_model->tune(row);
    edit(tr("Take the tune %1").arg(QString::fromStdString(tune.name)),
         [&](Setup& changed) { changed = withDesign(std::move(changed), tune.design); });
}

void TunesPanel::remove()
{
    const int row = chosen();
    if (row < 0)
        return;
    const bool hadFocus = hasFocusInside();
    edit(tr("Delete the tune %1").arg(QString::fromStdString(m_model->tune(row).name)),
         [row](Setup& changed) { changed.tunes.erase(changed.tunes.begin() + row); });
    m_table->selectRow(std::min(row, m_model->rowCount() - 1));
    if (hadFocus && m_model->rowCount() > 0)
        m_table->setFocus();
}

bool TunesPanel::hasFocusInside() const
{
    return isAncestorOf(QApplication::focusWidget());
}

void TunesPanel::setupChanged()
{
    const Setup& setup = m_document.setup();
    m_job.want(tuneFiguresKey(setup),
               [setup](const Caller<std::vector<Result<TuneFigures>>>& caller) {
                   return figuresOfTunes(setup, caller.stop);
               });
    m_model->setLate(m_job.isDue());
    emit figuresChanged();
}

const std::vector<Result<TuneFigures>>& TunesPanel::figures() const
{
    return m_model->allFigures();
}

bool TunesPanel::isLate() const
{
    return m_model->isLate();
}

}  // namespace stillbay::ui
