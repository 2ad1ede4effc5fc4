-- Marks the file as ours for any program that looks at it: "StrT".
PRAGMA application_id = 1400129108;
