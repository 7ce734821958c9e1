// SPDX-License-Identifier: MIT
#include "ui/window/recent_list.h"

#include "ui/document/file_status.h"
#include "ui/document/recent_files.h"
#include "ui/widgets/labels.h"

#include <QDir>
#include <QFileInfo>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>

namespace stillbay::ui {
namespace {

constexpr qsizetype kShown = 5;

}  // namespace

RecentList::RecentList(RecentFiles& recent, QWidget* parent)
    : QWidget(parent), m_recent(recent), m_rows(new QFormLayout(this))
{
    m_rows->setContentsMargins(0, 0, 0, 0);
    m_rows->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    m_rows->setVerticalSpacing(4);
    connect(&m_recent, &RecentFiles::changed, this, &RecentList::refresh);
    refresh();
}

void RecentList::refresh()
{
    while (m_rows->rowCount() > 0) {
        const QFormLayout::TakeRowResult row = m_rows->takeRow(0);
        for (QLayoutItem* const item : {row.labelItem, row.fieldItem}) {
            if (item) {
                item->widget()->hide();
                item->widget()->deleteLater();  // it may be the very button that is being pressed
            }
            delete item;
        }
    }
    const QStringList paths = m_recent.paths().mid(0, kShown);
    setVisible(!paths.isEmpty());
    if (!paths.isEmpty())
        m_rows->addRow(new QLabel(tr("Opened last:")));
    for (const QString& path : paths)
        addRow(path);
}

void RecentList::addRow(const QString& path)
{
    const QFileInfo file(path);
    const bool isThere = isFile(path);
    const QString folder = QDir::toNativeSeparators(file.absolutePath());
    auto* const button = new QPushButton(file.fileName().replace(u'&', QStringLiteral("&&")), this);
    button->setAccessibleName(tr("Open %1").arg(path));
    button->setToolTip(QDir::toNativeSeparators(path));
    button->setEnabled(isThere);
    connect(button, &QPushButton::clicked, this, [this, path] { emit chosen(path); });
    auto* const where = new ElidedLabel(Qt::AlignLeft);
    where->setText(isThere ? folder : tr("missing, was in %1").arg(folder));
    m_rows->addRow(button, where);
}

}  // namespace stillbay::ui
