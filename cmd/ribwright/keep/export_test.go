package keep

// What a test of journals writes itself.
const JournalHead = journalHead

func JournalName(run int) string { return journalName(run) }

// HoldHead is what the file says that holds a folder.
const HoldHead = holdHead
