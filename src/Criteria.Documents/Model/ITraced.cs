namespace Criteria.Documents.Model;

/// <summary>Something a sentence may rest on.</summary>
internal interface ITraced
{
    /// <summary>Whether a sentence may rest on it: a fact that is known, a finding that is settled.</summary>
    public bool Stands { get; }

    /// <summary>Whether it is there and still undecided.</summary>
    public bool IsOpen { get; }

    /// <summary>Whether the sentence itself says where it stands, so that it needs no mark: a document of the case.</summary>
    public bool NamesItself => false;

    /// <summary>Its name with the night it is about, the same for the same thing.</summary>
    public string Key { get; }
}
