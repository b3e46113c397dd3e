// Both the library and the assertions have a type of this name; tests mean the library's.
global using Case = Criteria.Core.Cases.Case;
